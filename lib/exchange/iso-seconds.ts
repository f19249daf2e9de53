/** Seconds of a moment of ISO 8601 as XML Schema writes it (`2026-05-01T09:30:00Z`), from 1970; undefined where it is none. */
export function isoSeconds(text: string): number | undefined {
  const match = /^\s*(\d{4})-(\d{2})-(\d{2})T(\d{2}):(\d{2}):(\d{2}(?:\.\d+)?)(?:Z|([+-])(\d{2}):?(\d{2}))?\s*$/.exec(text)
  if (!match) return undefined
  const [, year, month, day, hour, minute, second, sign, offHour, offMinute] = match
  const off_s = sign === undefined ? 0 : (sign === '-' ? -1 : 1) * (Number(offHour) * 3600 + Number(offMinute) * 60)
  return daysFrom1970(Number(year), Number(month), Number(day)) * 86_400 + Number(hour) * 3600 + Number(minute) * 60 + Number(second) - off_s
}

/** Days of the Gregorian calendar: years begin in March, so that the day that comes and goes is the last. */
function daysFrom1970(year: number, month: number, day: number): number {
  const y = month <= 2 ? year - 1 : year
  const ofYear = Math.floor((153 * ((month + 9) % 12) + 2) / 5) + day - 1
  return 365 * y + Math.floor(y / 4) - Math.floor(y / 100) + Math.floor(y / 400) + ofYear - 719_468
}
