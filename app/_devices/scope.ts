import { z } from 'zod'
import type { SeatRole } from '@/lib/exercise'

const id = z.string().min(1).max(64)
const districtId = id
const seats = ['waterSupply', 'attack', 'dumpSite', 'fillSite'] as const satisfies readonly SeatRole[]

/**
 * What one code opens, and nothing else. A new kind of thing is one more member here, its rules in `app/_server/devices/access.ts`, and its
 * words `devices.scope.<kind>`.
 */
export const scopeSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('district'), districtId }).describe('read and edit one district, its plans and data'),
  z.strictObject({ kind: z.literal('read-district'), districtId }).describe('read them'),
  z.strictObject({ kind: z.literal('seat'), districtId, exerciseId: id, role: z.enum(seats), siteId: id.optional() }).describe('what one seat of one exercise knows and decides; no document'),
])

export type Scope = z.infer<typeof scopeSchema>
export type SeatScope = Extract<Scope, { kind: 'seat' }>
export type DistrictScope = Exclude<Scope, SeatScope>

/** True if a device with this scope may change what it opens. */
export const mayEdit = (scope: DistrictScope): boolean => scope.kind === 'district'

/** Where a device with this scope begins. */
export const firstPageOf = (scope: Scope): string => (scope.kind === 'seat' ? '/seat' : `/district/${encodeURIComponent(scope.districtId)}/plan`)
