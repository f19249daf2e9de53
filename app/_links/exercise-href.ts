import { screenHref } from './screens'

/** Address of the exercises of a district, of one of them, or of going through it. */
export function exerciseHref(districtId: string, exerciseId?: string, page?: 'debrief'): string {
  const base = screenHref('exercise', districtId, exerciseId)
  return page ? `${base}/${page}` : base
}

/** Address of an exercise with how a prime drill went that was played for one of its troubles. */
export const outcomeHref = (districtId: string, exerciseId: string, factId: string, primed_s: number | undefined): string =>
  `${exerciseHref(districtId, exerciseId)}?fact=${encodeURIComponent(factId)}&primed=${primed_s === undefined ? 'no' : Math.round(primed_s)}`

/** Address of the exercises of a district, where one of this plan is to be made. */
export const exerciseOfPlanHref = (districtId: string, planId: string): string => `${exerciseHref(districtId)}?plan=${encodeURIComponent(planId)}`
