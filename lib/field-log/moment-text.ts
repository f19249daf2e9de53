const DAY_MS = 86_400_000

/**
 * Days from 1970-01-01 to a day of the Gregorian calendar.
 *
 * @param month 1 to 12
 * @source the calendar's own rule: a year from March on has its leap day last, 400 years have 146,097 days
 */
export function daysFromDay(year: number, month: number, day: number): number {
  const y = month <= 2 ? year - 1 : year
  const era = Math.floor(y / 400)
  const yearOfEra = y - era * 400
  const dayOfYear = Math.floor((153 * (month + (month > 2 ? -3 : 9)) + 2) / 5) + day - 1
  return era * 146_097 + yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear - 719_468
}

/** The other way round. */
function dayFromDays(days: number): { year: number; month: number; day: number } {
  const z = days + 719_468
  const era = Math.floor(z / 146_097)
  const doe = z - era * 146_097
  const yoe = Math.floor((doe - Math.floor(doe / 1460) + Math.floor(doe / 36_524) - Math.floor(doe / 146_096)) / 365)
  const doy = doe - (365 * yoe + Math.floor(yoe / 4) - Math.floor(yoe / 100))
  const mp = Math.floor((5 * doy + 2) / 153)
  const month = mp + (mp < 10 ? 3 : -9)
  return { year: yoe + era * 400 + (month <= 2 ? 1 : 0), month, day: doy - Math.floor((153 * mp + 2) / 5) + 1 }
}

const two = (number: number): string => String(number).padStart(2, '0')

/** A moment as ISO 8601 in UTC, with as many digits as it needs: `2026-03-07T14:05:09Z`. */
export function isoFromMoment(at_ms: number): string {
  const { year, month, day } = dayFromDays(Math.floor(at_ms / DAY_MS))
  const rest = at_ms - Math.floor(at_ms / DAY_MS) * DAY_MS
  const seconds = Math.floor(rest / 1000)
  const part = rest % 1000 === 0 ? '' : `.${String(rest % 1000).padStart(3, '0')}`
  return `${year}-${two(month)}-${two(day)}T${two(Math.floor(seconds / 3600))}:${two(Math.floor(seconds / 60) % 60)}:${two(seconds % 60)}${part}Z`
}

const ISO = /^(\d{4})-(\d{2})-(\d{2})[T ](\d{1,2}):(\d{2})(?::(\d{2})(?:[.,](\d{1,3})\d*)?)?\s*(Z|[+-]\d{2}:?\d{2})$/i

/** The moment that an ISO 8601 text with its offset says, [ms]; undefined where it is none. */
export function findMoment(text: string): number | undefined {
  const [, year, month, day, hour, minute, second = '0', part = '0', zone = 'Z'] = ISO.exec(text.trim()) ?? []
  if (year === undefined) return undefined
  const days = daysFromDay(Number(year), Number(month), Number(day))
  const back = dayFromDays(days)
  if (back.month !== Number(month) || back.day !== Number(day) || Number(hour) > 23 || Number(minute) > 59 || Number(second) > 59) return undefined
  const [, sign, zoneHour = '0', zoneMinute = '0'] = /^([+-])(\d{2}):?(\d{2})$/.exec(zone) ?? []
  const offset_min = (sign === '-' ? -1 : 1) * (Number(zoneHour) * 60 + Number(zoneMinute))
  return days * DAY_MS + ((Number(hour) * 60 + Number(minute) - (sign === undefined ? 0 : offset_min)) * 60 + Number(second)) * 1000 + Number(part.padEnd(3, '0'))
}

const CLOCK = /^(\d{1,2})[:.h]?(\d{2})(?:[:.](\d{2}))?$/

/** Time of day as people write it, `14:05`, `1405`, `9:07:30`, in seconds after midnight; undefined where it is none. */
export function findTimeOfDay_s(text: string): number | undefined {
  const [, hour, minute, second = '0'] = CLOCK.exec(text.trim()) ?? []
  if (hour === undefined || Number(hour) > 23 || Number(minute) > 59 || Number(second) > 59) return undefined
  return (Number(hour) * 60 + Number(minute)) * 60 + Number(second)
}
