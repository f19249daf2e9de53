import { requireNotNegative, requirePositive } from '../issue'
import { GALLONS_PER_CUBIC_FOOT, SECONDS_PER_MINUTE } from '../units'

export type DrawdownAsk = {
  /** Above the strainer, 0 or more. */
  readonly usable_gal: number
  readonly inflow_gpm: number
  readonly draw_gpm: number
  /** Of the surface; absent: the fall of the level is not known. */
  readonly surface_sqft?: number
}

export type Drawdown = {
  /** Draw less inflow; 0 or below: the source holds. */
  readonly net_gpm: number
  /** Until nothing is left above the strainer; absent: never at this flow. */
  readonly lasts_s?: number
  /** Fall of the surface in an hour; absent without a surface. */
  readonly fallPerHour_ft?: number
  /** Fall of the surface when all is drawn. */
  readonly wholeFall_ft?: number
}

/**
 * How long a source lasts at a steady draw, its surface taken as even all the way down.
 *
 *   t = V / (Q − inflow)      fall in an hour = 60 · (Q − inflow) / (7.48 · area)
 *
 * Banks that slope in make the lower part fall faster; the usable volume is then less than the lens, so enter it.
 *
 * @param ask volumes in gal, flows in gpm, all 0 or more; surface above 0
 * @returns time and fall
 * @throws RangeError if a number is out of range
 * @source definition; tests/reference/sources.json (30,000 gal at 250 gpm is 2 h: conservation-district page, seen)
 */
export function drawdown({ usable_gal, inflow_gpm, draw_gpm, surface_sqft }: DrawdownAsk): Drawdown {
  requireNotNegative('usable_gal', usable_gal)
  requireNotNegative('inflow_gpm', inflow_gpm)
  requireNotNegative('draw_gpm', draw_gpm)
  const net_gpm = draw_gpm - inflow_gpm
  const lasts = net_gpm > 0 ? { lasts_s: (usable_gal / net_gpm) * SECONDS_PER_MINUTE } : {}
  if (surface_sqft === undefined) return { net_gpm, ...lasts }
  requirePositive('surface_sqft', surface_sqft)
  const cubicFoot_gal = surface_sqft * GALLONS_PER_CUBIC_FOOT
  return { net_gpm, ...lasts, fallPerHour_ft: (Math.max(0, net_gpm) * 60) / cubicFoot_gal, wholeFall_ft: usable_gal / cubicFoot_gal }
}

/** Water left after a time at a steady draw, [gal]; never below 0 nor above what was there. */
export function leftAfter_gal({ usable_gal, inflow_gpm, draw_gpm }: DrawdownAsk, after_s: number): number {
  requireNotNegative('after_s', after_s)
  return Math.min(usable_gal, Math.max(0, usable_gal - ((draw_gpm - inflow_gpm) * after_s) / SECONDS_PER_MINUTE))
}
