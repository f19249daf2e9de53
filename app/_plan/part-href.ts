import { screenHref } from '../_ui/screens'
import type { PartName } from './chain-column'

/** Address of the planner with one card of the chain open. */
export const partHref = (part: PartName, districtId: string, planId: string): string => `${screenHref('plan', districtId, planId)}?part=${part}`
