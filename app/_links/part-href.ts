import type { ChainPart } from '@/lib/supply'
import { screenHref } from './screens'

const partNames = ['source', 'fill', 'road', 'tenders', 'dump', 'fireGround'] as const satisfies readonly (ChainPart['part'] | 'tenders')[]
/** A card of the planner's chain. */
export type PartName = (typeof partNames)[number]

/** A part named in an address, so that a link may open its card. */
export const findPart = (text: unknown): PartName | undefined => partNames.find((name) => name === text)

/** Address of the planner with one card of the chain open. */
export const partHref = (part: PartName, districtId: string, planId: string): string => `${screenHref('plan', districtId, planId)}?part=${part}`
