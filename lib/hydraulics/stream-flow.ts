import { requireNotNegative, requirePositive } from '../issue'
import { GALLONS_PER_CUBIC_FOOT, SECONDS_PER_MINUTE } from '../units'

/** Mean over surface speed by mean depth: straight lines between, ends held. USBR Water Measurement Manual (memory, moderate). */
const byDepth = [
  [1, 0.66], [2, 0.68], [3, 0.70], [4, 0.72], [5, 0.74], [6, 0.76], [9, 0.77], [12, 0.78], [15, 0.79], [20, 0.80],
] as const

/**
 * Share of a float's speed that the whole stream moves at.
 *
 * Teaching notes use 0.85, a volunteer manual 0.8 over rock and 0.9 over mud; the depth table promises least and is used.
 *
 * @param depth_ft mean depth, above 0
 * @returns k, 0.66 to 0.80
 * @throws RangeError if not positive
 * @source USBR Water Measurement Manual, float table (memory, moderate), tests/reference/sources.json
 */
export function floatFactor(depth_ft: number): number {
  requirePositive('depth_ft', depth_ft)
  const above = byDepth.findIndex(([depth]) => depth >= depth_ft)
  if (above === 0) return byDepth[0][1]
  const upper = byDepth[above], lower = byDepth[above - 1]
  if (!upper || !lower) return byDepth[byDepth.length - 1]?.[1] ?? 0.8
  return lower[1] + ((upper[1] - lower[1]) * (depth_ft - lower[0])) / (upper[0] - lower[0])
}

/**
 * Flow of a stream by the float method: a straight reach of 50 ft or more, three runs.
 *
 *   Q = k · V · width · depth
 *
 * @param width_ft        mean, above 0
 * @param depth_ft        mean, above 0
 * @param surface_ftPerS  speed of the float, 0 or more
 * @param factor          k; default by depth
 * @returns [gpm]
 * @throws RangeError if out of range
 * @source state float-area sheet (method seen), tests/reference/sources.json
 */
export function streamFlow_gpm(width_ft: number, depth_ft: number, surface_ftPerS: number, factor = floatFactor(depth_ft)): number {
  requirePositive('width_ft', width_ft)
  requireNotNegative('surface_ftPerS', surface_ftPerS)
  requirePositive('factor', factor)
  return factor * surface_ftPerS * width_ft * depth_ft * GALLONS_PER_CUBIC_FOOT * SECONDS_PER_MINUTE
}
