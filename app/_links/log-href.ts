import { screenHref } from './screens'

export type LogPage = 'form' | 'paper' | 'review'

/** Address of the logs of a district, of one of them, or of one of its pages. */
export function logHref(districtId: string, logId?: string, page?: LogPage): string {
  const base = screenHref('log', districtId, logId)
  return page ? `${base}/${page}` : base
}

/** Address of the logs of a district, where one of this plan is to be begun. */
export const logOfPlanHref = (districtId: string, planId: string): string => `${logHref(districtId)}?plan=${encodeURIComponent(planId)}`
