import { formatNumber } from './format-number'
import { roundTo } from './rounding'
import type { Toward } from './rounding'
import { UNIT_SPACE } from './unit-space'

const two = (n: number): string => String(n).padStart(2, '0')

/**
 * A span of time: "45 s", "1 min 30 s", "14 min", "2 h 5 min", "2 h 5 min 30 s"; no line breaks between a number and its unit.
 *
 * @param time_s any finite number; seconds are kept to the nearest one
 */
export function formatTime(time_s: number): string {
  const total = Math.round(Math.abs(time_s))
  const sign = time_s < 0 && total > 0 ? '−' : ''
  const of = (count: number, unit: 'h' | 'min' | 's') => `${formatNumber(count)}${UNIT_SPACE}${unit}`
  if (total < 60) return sign + of(total, 's')
  const seconds = total % 60
  const minutes = Math.floor(total / 60)
  const parts = minutes < 120 ? [of(minutes, 'min')] : [of(Math.floor(minutes / 60), 'h'), ...(minutes % 60 || seconds ? [of(minutes % 60, 'min')] : [])]
  return sign + [...parts, ...(seconds ? [of(seconds, 's')] : [])].join(' ')
}

/** A time as a headline shows it: to the minute; under a minute as it is. */
export const shownTime_s = (time_s: number, toward: Toward = 'nearest'): number => (Math.abs(time_s) < 60 ? time_s : roundTo(time_s, 60, toward))

/** A span for a headline, in whole minutes: "14 min", "2 h 5 min"; under a minute, seconds. */
export const formatMinutes = (time_s: number, toward: Toward = 'nearest'): string => formatTime(shownTime_s(time_s, toward))

/** A moment on a running clock, from its start: "0:00", "14:30", "1:02:30". For axes and logs. */
export function formatClock(time_s: number): string {
  const total = Math.round(Math.abs(time_s))
  const sign = time_s < 0 && total > 0 ? '−' : ''
  const hours = Math.floor(total / 3600)
  const minutes = Math.floor(total / 60) % 60
  return hours ? `${sign}${hours}:${two(minutes)}:${two(total % 60)}` : `${sign}${minutes}:${two(total % 60)}`
}
