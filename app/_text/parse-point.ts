import type { Point } from '@/lib/geo'
import { say } from './say'

export type ParsedPoint =
  | { readonly kind: 'absent' }
  | { readonly kind: 'value'; readonly value: Point; readonly entered: string }
  | { readonly kind: 'refused'; readonly sentence: string }

const half = String.raw`([NSEW])?\s*([-−+]?\d+(?:\.\d+)?)\s*°?\s*(?:(\d+(?:\.\d+)?)\s*['′’]\s*)?(?:(\d+(?:\.\d+)?)\s*(?:"|″|”|'')\s*)?([NSEW])?`
const pointPattern = new RegExp(`^${half}\\s*[,;\\s]\\s*${half}$`, 'i')

function degreesOf(sign: string, degrees: string, minutes: string | undefined, seconds: string | undefined): number | undefined {
  const whole = Number(degrees.replace('−', '-'))
  const m = Number(minutes ?? 0)
  const s = Number(seconds ?? 0)
  if (m >= 60 || s >= 60) return undefined
  const size = Math.abs(whole) + m / 60 + s / 3600
  const isBelow = whole < 0 || degrees.startsWith('-') || degrees.startsWith('−')
  return (isBelow ? -size : size) * (/[sw]/i.test(sign) ? -1 : 1)
}

/**
 * Reads a place: "44.0512, -73.2041", "44.0512 N 73.2041 W", "44° 3′ 4″ N, 73° 12′ 15″ W". Latitude first.
 *
 * @returns the point in degrees; absent for an empty text; else a sentence
 */
export function parsePoint(text: string, field: string): ParsedPoint {
  const entered = text.trim()
  if (entered === '') return { kind: 'absent' }
  const match = pointPattern.exec(entered)
  const refused: ParsedPoint = { kind: 'refused', sentence: say('entry.not-a-point', { field, text: entered }) }
  if (!match) return refused
  const [, beforeLat = '', latDegrees = '', latMinutes, latSeconds, afterLat = '', beforeLon = '', lonDegrees = '', lonMinutes, lonSeconds, afterLon = ''] = match
  const latLetter = beforeLat || afterLat
  const lonLetter = beforeLon || afterLon
  if (/[ew]/i.test(latLetter) || /[ns]/i.test(lonLetter)) return refused
  const lat = degreesOf(latLetter, latDegrees, latMinutes, latSeconds)
  const lon = degreesOf(lonLetter, lonDegrees, lonMinutes, lonSeconds)
  if (lat === undefined || lon === undefined) return refused
  if (Math.abs(lat) > 90 || Math.abs(lon) > 180) return { kind: 'refused', sentence: say('entry.point-out-of-range', { field, text: entered }) }
  return { kind: 'value', value: { lat, lon }, entered }
}

/** A place as shown and typed: "44.05120, −73.20410"; the fifth decimal is about a metre. */
export function formatPoint({ lat, lon }: Point): string {
  return `${lat.toFixed(5)}, ${lon.toFixed(5)}`.replaceAll('-', '−')
}
