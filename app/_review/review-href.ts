/** Address of the review of a log, or of what all logs of a district say. */
export function reviewHref(districtId: string, logId?: string): string {
  const base = `/district/${encodeURIComponent(districtId)}/log`
  return logId === undefined ? `${base}/reviews` : `${base}/${encodeURIComponent(logId)}/review`
}
