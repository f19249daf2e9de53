import { screenHref } from './screens'

/** Pages of one plan, in the order an officer asks. The first is the planner itself. */
export const planPages = ['map', 'doubt', 'advice', 'request', 'handbook', 'hose'] as const
export type PlanPage = (typeof planPages)[number]

/** Address of a page of a plan. */
export function planPageHref(page: PlanPage, districtId: string, planId: string): string {
  const plan = screenHref('plan', districtId, planId)
  return page === 'map' ? plan : `${plan}/${page}`
}
