import { LOCALE } from './format-number'
import { localDay } from './local-day'

const days = new Intl.DateTimeFormat(LOCALE, { year: 'numeric', month: 'short', day: 'numeric', timeZone: 'UTC' })
const CALENDAR_DAY = /^\d{4}-\d{2}-\d{2}$/

/** A calendar day or moment as "Mar 4, 2025", a moment by the day it was where this device is; the text itself if it is neither. */
export function formatDay(iso: string): string {
  const time = Date.parse(iso)
  if (Number.isNaN(time)) return iso
  return days.format(CALENDAR_DAY.test(iso) ? time : Date.parse(localDay(new Date(time))))
}

/** Today, where this device is. */
export const formatToday = (): string => formatDay(localDay())
