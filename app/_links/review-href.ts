import { logHref } from './log-href'
import { screenHref } from './screens'

/** Address of the review of a log, or of what all logs of a district say. */
export const reviewHref = (districtId: string, logId?: string): string =>
  logId === undefined ? screenHref('log', districtId, 'reviews') : logHref(districtId, logId, 'review')
