import { daysFromDay } from '../calendar'

/** Seconds of a moment of ISO 8601 as XML Schema writes it (`2026-05-01T09:30:00Z`), from 1970; undefined where it is none. */
export function isoSeconds(text: string): number | undefined {
  const match = /^\s*(\d{4})-(\d{2})-(\d{2})T(\d{2}):(\d{2}):(\d{2}(?:\.\d+)?)(?:Z|([+-])(\d{2}):?(\d{2}))?\s*$/.exec(text)
  if (!match) return undefined
  const [, year, month, day, hour, minute, second, sign, offHour, offMinute] = match
  const off_s = sign === undefined ? 0 : (sign === '-' ? -1 : 1) * (Number(offHour) * 3600 + Number(offMinute) * 60)
  return daysFromDay(Number(year), Number(month), Number(day)) * 86_400 + Number(hour) * 3600 + Number(minute) * 60 + Number(second) - off_s
}
