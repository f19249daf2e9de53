import { SECONDS_PER_MINUTE } from '../units'
import type { ShuttleSpec } from '../shuttle'
import { broughtBy_gal, type Load } from './loads'
import { hauledBy_gal } from './replay'

/** Water over time: into the tanks as logged and as planned, and asked for at the fire ground. Gallons since dispatch. */
export type Curves = {
  readonly times_s: readonly number[]
  readonly achieved_gal: readonly number[]
  readonly planned_gal?: readonly number[]
  readonly needed_gal?: readonly number[]
}

const CURVE_STEP_S = 60
/** Flow over the last ten minutes. */
const LATELY_S = 600
const MOST_POINTS = 1500

/**
 * @param needed flow asked for from each moment on; absent: nobody says
 * @param end_s  of the log
 */
export function curvesOf(loads: readonly Load[], spec: ShuttleSpec | undefined, needed: readonly { from_s: number; flow_gpm: number }[], end_s: number): Curves {
  const step_s = CURVE_STEP_S * Math.max(1, Math.ceil(end_s / CURVE_STEP_S / MOST_POINTS))
  const times_s = [...Array.from({ length: Math.floor(end_s / step_s) + 1 }, (_, k) => k * step_s), ...(end_s % step_s > 0 ? [end_s] : [])]
  return {
    times_s,
    achieved_gal: times_s.map((time_s) => broughtBy_gal(loads, time_s)),
    ...(spec && { planned_gal: hauledBy_gal(spec, times_s) }),
    ...(needed.length > 0 && { needed_gal: times_s.map((time_s) => askedBy_gal(needed, time_s)) }),
  }
}

/** Gallons asked for by a moment: each stage lasts until the next. */
function askedBy_gal(stages: readonly { from_s: number; flow_gpm: number }[], at_s: number): number {
  return stages.reduce((sum, { from_s, flow_gpm }, k) => sum + (flow_gpm * Math.max(0, Math.min(at_s, stages[k + 1]?.from_s ?? Infinity) - from_s)) / SECONDS_PER_MINUTE, 0)
}

/** Mean flow over the ten minutes before each moment, or over what there is of them. */
export function lately_gpm(times_s: readonly number[], gal: readonly number[]): number[] {
  return times_s.map((time_s, k) => {
    const from = times_s.findIndex((one) => one >= time_s - LATELY_S)
    const over_s = time_s - times_s[from]!
    return over_s > 0 ? ((gal[k]! - gal[from]!) * SECONDS_PER_MINUTE) / over_s : 0
  })
}
