import type { Bundle, District, GroundHeights, Leg, Plan } from '@/lib/plan'

/** Joins a plan with its district and the legs and heights found for it into one closed file. */
export const bundleFromDocuments = (district: District, plan: Plan, legs: readonly Leg[] = [], layHeights: readonly GroundHeights[] = []): Bundle => ({
  format: 'millrace-plan',
  version: 1,
  district,
  plan,
  legs: [...legs],
  ...(layHeights.length > 0 && { layHeights: [...layHeights] }),
})

/**
 * The documents of a bundle under fresh ids, so that opening a file never writes over what
 * is there. Ids inside them stay, for they are looked up within their own documents only.
 */
export function documentsFromBundle({ district, plan }: Bundle, newId: () => string): { district: District; plan: Plan } {
  const districtId = newId()
  return { district: { ...district, id: districtId }, plan: { ...plan, id: newId(), districtId } }
}

/** A plan again, under a fresh id and another name, to change without touching the first. */
export const copyOfPlan = (plan: Plan, name: string, newId: () => string): Plan => ({ ...plan, id: newId(), name: name.slice(0, 120) })
