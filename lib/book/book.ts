import type { Bundle, District, Plan } from '../plan'
import type { SupplyResult } from '../supply'

/** A plan with every way found, and its answer. */
export type AnsweredPlan = { readonly bundle: Bundle; readonly result: SupplyResult }

/** One sheet of the book, by what it is about. */
export type SheetRef =
  | { readonly kind: 'plan'; readonly planId: string }
  | { readonly kind: 'fill' | 'dump'; readonly planId: string; readonly siteId: string }
  | { readonly kind: 'draft'; readonly draftSiteId: string }
  | { readonly kind: 'hazard'; readonly hazardId: string }

/** A sheet’s own words among all of a district, by which it is chosen and found again. */
export const sheetKey = (ref: SheetRef): string =>
  ref.kind === 'plan' ? `plan ${ref.planId}` : ref.kind === 'draft' ? `draft ${ref.draftSiteId}` : ref.kind === 'hazard' ? `hazard ${ref.hazardId}` : `${ref.kind} ${ref.planId} ${ref.siteId}`

/**
 * Every sheet of a district in the order of the book: each plan with the sheets of its own sites behind it, then all draft
 * sites, then the target hazards that no plan is made for.
 */
export function sheetsOf(district: Pick<District, 'draftSites' | 'hazards'>, plans: readonly Plan[]): SheetRef[] {
  const planned = new Set(plans.map(({ hazardId }) => hazardId as string | undefined))
  return [
    ...plans.flatMap((plan): SheetRef[] => [
      { kind: 'plan', planId: plan.id },
      ...plan.fillSites.map(({ id }) => ({ kind: 'fill' as const, planId: plan.id, siteId: id as string })),
      ...plan.dumpSites.map(({ id }) => ({ kind: 'dump' as const, planId: plan.id, siteId: id as string })),
    ]),
    ...district.draftSites.map(({ id }): SheetRef => ({ kind: 'draft', draftSiteId: id })),
    ...district.hazards.filter(({ id }) => !planned.has(id)).map(({ id }): SheetRef => ({ kind: 'hazard', hazardId: id })),
  ]
}
