import { daysFromDay } from '@/lib/calendar'
import { findTimeOfDay_s } from '@/lib/field-log'

const clocks = new Map<string, Intl.DateTimeFormat>()

function clockOf(zone: string | undefined): Intl.DateTimeFormat {
  const key = zone ?? ''
  let clock = clocks.get(key)
  if (!clock) {
    const options = { year: 'numeric', month: '2-digit', day: '2-digit', hour: '2-digit', minute: '2-digit', second: '2-digit', hourCycle: 'h23' } as const
    try {
      clock = new Intl.DateTimeFormat('en-US', { ...options, ...(zone !== undefined && { timeZone: zone }) })
    } catch {
      // A zone that this browser does not know: the device's own.
      clock = new Intl.DateTimeFormat('en-US', options)
    }
    clocks.set(key, clock)
  }
  return clock
}

type Parts = { year: number; month: number; day: number; hour: string; minute: string; second: string }

function partsOf(at_ms: number, zone: string | undefined): Parts {
  const parts = Object.fromEntries(clockOf(zone).formatToParts(at_ms).map(({ type, value }) => [type, value])) as Record<string, string>
  return { year: Number(parts.year), month: Number(parts.month), day: Number(parts.day), hour: parts.hour ?? '', minute: parts.minute ?? '', second: parts.second ?? '' }
}

/** Clock time at the place of a log: `14:05:30`, or `14:05`. @param zone IANA; absent: the device's own */
export function clockTime(at_ms: number, zone: string | undefined, { hasSeconds = true } = {}): string {
  const { hour, minute, second } = partsOf(at_ms, zone)
  return hasSeconds ? `${hour}:${minute}:${second}` : `${hour}:${minute}`
}

/** Calendar day there, YYYY-MM-DD. */
export function dayAt(at_ms: number, zone: string | undefined): string {
  const { year, month, day } = partsOf(at_ms, zone)
  return `${year}-${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`
}

/** By how much the clock of a zone is ahead of UTC at a moment [ms]. */
function aheadOf(at_ms: number, zone: string | undefined): number {
  const { year, month, day, hour, minute, second } = partsOf(at_ms, zone)
  return (daysFromDay(year, month, day) * 86_400 + (Number(hour) * 60 + Number(minute)) * 60 + Number(second)) * 1000 - Math.floor(at_ms / 1000) * 1000
}

const DAY_MS = 86_400_000
/** More than this before the time before it, a time of day is one of the next day. */
const NEXT_DAY_MS = 6 * 3_600_000

/**
 * The moment of a time of day on the day of a log, or on the next where it would lie long before the one before.
 *
 * @param day YYYY-MM-DD at the place
 */
export function momentAt(timeOfDay_s: number, day: string, zone: string | undefined, after_ms?: number): number {
  const [year = 1970, month = 1, date = 1] = day.split('-').map(Number)
  const wall_ms = (daysFromDay(year, month, date) * 86_400 + timeOfDay_s) * 1000
  // Twice, as the offset at the guess may be that of the other side of a change of clocks.
  const guess_ms = wall_ms - aheadOf(wall_ms, zone)
  const at_ms = wall_ms - aheadOf(guess_ms, zone)
  return after_ms !== undefined && at_ms < after_ms - NEXT_DAY_MS ? at_ms + DAY_MS : at_ms
}

/** Clocks of two devices differ by less, as a rule. */
const CLOCKS_MS = 10 * 60_000

/**
 * What was typed as a time of day, as the moment nearest to another that is not still to come.
 *
 * @param now_ms when it is typed
 * @returns undefined where it is no time
 */
export function typedMoment(text: string, near_ms: number, zone: string | undefined, now_ms: number): number | undefined {
  const timeOfDay_s = findTimeOfDay_s(text)
  if (timeOfDay_s === undefined) return undefined
  const at_ms = momentAt(timeOfDay_s, dayAt(near_ms, zone), zone)
  const latest_ms = Math.max(now_ms, near_ms) + CLOCKS_MS
  return [at_ms, at_ms - DAY_MS, at_ms + DAY_MS].filter((one) => one <= latest_ms).sort((a, b) => Math.abs(a - near_ms) - Math.abs(b - near_ms))[0]
}

/** The device's own clock, UTC [ms]. */
export const deviceTime_ms = (): number => Date.now()
