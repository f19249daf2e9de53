import { LOCALE } from './format-number'

const days = new Intl.DateTimeFormat(LOCALE, { year: 'numeric', month: 'short', day: 'numeric', timeZone: 'UTC' })

/** A calendar day or moment as "Mar 4, 2025"; the text itself if it is neither. Moments are shown by their day in UTC. */
export function formatDay(iso: string): string {
  const time = Date.parse(iso)
  return Number.isNaN(time) ? iso : days.format(time)
}
