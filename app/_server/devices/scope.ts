import { z } from 'zod'

const districtId = z.string().min(1).max(64)

/**
 * What one code opens, and nothing else. A new kind of thing is one more member here, its rules in `access.ts`, and its
 * words `devices.scope.<kind>`.
 */
export const scopeSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('district'), districtId }).describe('read and edit one district, its plans and data'),
  z.strictObject({ kind: z.literal('read-district'), districtId }).describe('read them'),
])

export type Scope = z.infer<typeof scopeSchema>

/** True if a device with this scope may change what it opens. */
export const mayEdit = (scope: Scope): boolean => scope.kind === 'district'

/** Where a device with this scope begins. */
export const firstPageOf = (scope: Scope): string => `/district/${encodeURIComponent(scope.districtId)}/plan`
