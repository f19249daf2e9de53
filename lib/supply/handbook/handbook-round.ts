import { HANDBOOK_AVERAGE_MPH } from '../../hydraulics'
import { requireNotNegative, requirePositive } from '../../issue'
import { SECONDS_PER_MINUTE } from '../../units'

/** What a form needs to know of one tender. */
export type RoundInputs = {
  /** Nominal tank. */
  readonly tank_gal: number
  /** Road miles to the fill site, empty, and back, loaded. */
  readonly toFill_mi: number
  readonly toDump_mi: number
  /** Average speed of the travel formula. */
  readonly average_mph: number
  /** At the fill site: manoeuvre, make and break, filling. */
  readonly fillSite_s: number
  /** At the dump site: manoeuvre and dumping. */
  readonly dumpSite_s: number
}

/** A tender's round as a form writes it, all times of one round. */
export type HandbookRound = {
  /** Water counted a trip. */
  readonly counted_gal: number
  readonly dumpSite_s: number
  readonly toFill_s: number
  readonly toDump_s: number
  readonly fillSite_s: number
  readonly round_s: number
  readonly flow_gpm: number
}

/** Part of the tank that both forms count. */
const COUNTED_SHARE = 0.9
/** Starting and stopping, in the travel formula. */
const START_STOP_MIN = 0.65
/** The formula prints 1.70 at 35 mph, where 60/35 is 1.714. */
const PRINTED_SLOPE_MIN_PER_MI = 1.7

/** Minutes a mile of the travel formula: 1.70 at 35 mph as printed, else 60/V. */
function handbookSlope(average_mph: number): number {
  requirePositive('average_mph', average_mph)
  return average_mph === HANDBOOK_AVERAGE_MPH ? PRINTED_SLOPE_MIN_PER_MI : 60 / average_mph
}

/**
 * The rating bureau's form: 0.65 min of starting and stopping once a round.
 *
 *   gpm = (tank − 10 %) / (fill time + round-trip travel + discharge time),  T(min) = 0.65 + 1.7 · D,  D out and back
 *
 * @param inputs distances 0 or more, tank and speed above 0
 * @returns the round; the 0.65 min is split evenly over the two ways
 * @throws RangeError if out of range, or a round takes no time
 * @source rating bureau page on alternative supplies, as reproduced (seen); travel after the lesson plan Water Shuttle Operations (seen-2nd)
 */
export function ratingRound(inputs: RoundInputs): HandbookRound {
  const { toFill_mi, toDump_mi, average_mph } = inputs
  const slope = handbookSlope(average_mph)
  const once_min = toFill_mi + toDump_mi > 0 ? START_STOP_MIN / 2 : 0
  return roundFrom(inputs, once_min + slope * toFill_mi, once_min + slope * toDump_mi)
}

/**
 * The annex of the rural water supply standard: 0.65 min of starting and stopping on each way.
 *
 *   Q = V / (A + T1 + T2 + B) − 10 %,  T(min) = 0.65 + 1.7 · D
 *
 * @param inputs A is the dump site's time, B the fill site's, D1 empty, D2 loaded
 * @throws RangeError if out of range, or a round takes no time
 * @source NFPA 1142 annex on mobile supply (from memory, high)
 */
export function annexRound(inputs: RoundInputs): HandbookRound {
  const slope = handbookSlope(inputs.average_mph)
  const way_min = (distance_mi: number) => (distance_mi > 0 ? START_STOP_MIN + slope * distance_mi : 0)
  return roundFrom(inputs, way_min(inputs.toFill_mi), way_min(inputs.toDump_mi))
}

function roundFrom({ tank_gal, toFill_mi, toDump_mi, fillSite_s, dumpSite_s }: RoundInputs, toFill_min: number, toDump_min: number): HandbookRound {
  requirePositive('tank_gal', tank_gal)
  requireNotNegative('toFill_mi', toFill_mi)
  requireNotNegative('toDump_mi', toDump_mi)
  requireNotNegative('fillSite_s', fillSite_s)
  requireNotNegative('dumpSite_s', dumpSite_s)
  const toFill_s = toFill_min * SECONDS_PER_MINUTE
  const toDump_s = toDump_min * SECONDS_PER_MINUTE
  const round_s = dumpSite_s + toFill_s + fillSite_s + toDump_s
  requirePositive('round_s', round_s)
  const counted_gal = tank_gal * COUNTED_SHARE
  return { counted_gal, dumpSite_s, toFill_s, toDump_s, fillSite_s, round_s, flow_gpm: (counted_gal / round_s) * SECONDS_PER_MINUTE }
}
