import { requireNotNegative, requirePositive } from '../issue'
import { portableTankVolume_gal, type PortableTank } from './portable-tank'

/** A low-level strainer draws down to 1–2 in whatever the flow. Handbook (memory, moderate). */
const LEAST_IN = 2
/** 4 in at 500 gpm, 8 in at 1,000: assumed, no published table at hand. */
const ASSUMED_IN_PER_GPM = 8 / 1000

/** A depth at which a pumper was seen to lose its draft from a portable tank. */
export type DraftLimitPoint = { readonly flow_gpm: number; readonly height_in: number }

/**
 * Depth over a portable tank's floor below which a pumper loses its draft.
 *
 *   assumed: 4 in at 500 gpm, 8 in at 1,000, in line, never under 2 in
 *
 * Own measured points replace it: straight lines between them, the assumed line's slope outside.
 *
 * @param flow_gpm drawn, 0 or more
 * @param measured own points, any order
 * @returns [in]
 * @throws RangeError if out of range
 * @source assumed; least of 2 in from the handbook (memory, moderate)
 */
export function draftLimitHeight_in(flow_gpm: number, measured: readonly DraftLimitPoint[] = []): number {
  requireNotNegative('flow_gpm', flow_gpm)
  const points = [...measured].sort((a, b) => a.flow_gpm - b.flow_gpm)
  for (const { height_in } of points) requirePositive('height_in', height_in)
  const upper = points.find((point) => point.flow_gpm >= flow_gpm)
  const lower = points.findLast((point) => point.flow_gpm <= flow_gpm)
  if (upper && lower) {
    if (upper.flow_gpm === lower.flow_gpm) return Math.max(upper.height_in, lower.height_in)
    return lower.height_in + ((upper.height_in - lower.height_in) * (flow_gpm - lower.flow_gpm)) / (upper.flow_gpm - lower.flow_gpm)
  }
  const near = upper ?? lower
  const line_in = near ? near.height_in + (flow_gpm - near.flow_gpm) * ASSUMED_IN_PER_GPM : flow_gpm * ASSUMED_IN_PER_GPM
  return Math.max(near ? Math.min(near.height_in, LEAST_IN) : LEAST_IN, line_in)
}

/**
 * Water left in portable tanks when the draft is lost: one tank's volume at the limit depth, the strainer at its low side.
 *
 * @param tank     the one drafted from
 * @param flow_gpm drawn, 0 or more
 * @param measured own points
 * @returns [gal]
 */
export function draftLimitVolume_gal(tank: PortableTank, flow_gpm: number, measured: readonly DraftLimitPoint[] = []): number {
  return portableTankVolume_gal(tank, draftLimitHeight_in(flow_gpm, measured))
}
