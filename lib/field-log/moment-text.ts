import { dayFromDays, daysFromDay } from '../calendar'

const DAY_MS = 86_400_000

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
