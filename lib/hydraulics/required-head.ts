import { issue, requirePositive, type Issue } from '../issue'
import { feetOfWaterFromInchesOfMercury } from '../units'
import { atmosphericHead_ft } from './atmosphere'
import { RATING_ALTITUDE_FT, RATING_WATER_DEGF, ratedSuction } from './pump-rating'
import type { DraftPlace, DraftTestPoint, PumperHydraulics } from './pumper'
import { suctionLossAt1000gpm_ft } from './suction-setup'
import { vaporHead_ft } from './vapor-pressure'

/**
 * Lift at which flow is nil, at 1,000 ft and 60 °F: the one constant calibrated on the classical table of discharge at
 * various lifts, whose columns tend to 24–25.5 ft. Its confirmed cell, 590 gpm at 20 ft for a 1,000 gpm pump through
 * 20 ft of 5 in, fixes it.
 */
export const ZERO_FLOW_LIFT_FT = 25.3
/** A fit to a pumper's own points is kept where real pumps lie: zero-flow lift 18 to 29 ft at 1,000 ft. */
const ZERO_FLOW_LIFT_RANGE_FT = { low: 18, high: 29 } as const
/** Own points whose head differs less than this say nothing of the zero-flow lift. */
const LEAST_SPREAD_FT = 4
/** Own points are reproduced this well, or an issue says they disagree. */
export const TEST_POINT_TOLERANCE_SHARE = 0.02

/** Vacuum the dry test asks for up to 2,000 ft; 1 inHg less each 1,000 ft above. NFPA 1901/1911 (memory, high). */
export const standardDryVacuum_inHg = (altitude_ft: number): number => 22 - Math.max(0, altitude_ft - 2000) / 1000

/** Head a pump needs at its intake: a + b · (Q / rated)², [ft of water above the vapor pressure]. */
export type RequiredHead = {
  readonly a_ft: number
  readonly b_ft: number
  readonly rated_gpm: number
  readonly basis: 'rating' | 'dry-vacuum' | 'test-points'
  /** For each own point, flow computed at its conditions over flow entered, less 1; undefined for one left out. */
  readonly residualShares: readonly (number | undefined)[]
  readonly issues: readonly Issue[]
}

/** Head over the vapor pressure that is left for hose and pump at a place. */
export function availableHead_ft({ lift_ft, altitude_ft, barometer_inHg, water_degF }: DraftPlace): number {
  return atmosphericHead_ft(altitude_ft, barometer_inHg) - vaporHead_ft(water_degF) - lift_ft
}

const ratingAir_ft = availableHead_ft({ lift_ft: 0, altitude_ft: RATING_ALTITUDE_FT, water_degF: RATING_WATER_DEGF })

/**
 * Calibrates the head a pump needs at its intake.
 *
 *   H_required(Q) = a + b · (Q / Q_rated)²
 *
 * a: from the dry-vacuum test (the lift held with no flow), else from a zero-flow lift of 25.3 ft at 1,000 ft and 60 °F.
 * b: from the rated flow at the rated lift through 20 ft of the rated hose, at 1,000 ft.
 * Own test points replace it: one sets b; two or more with 4 ft or more between their heads set both, by least squares
 * of the flow's relative error. a stays within zero-flow lifts of 18 to 29 ft, b at 0 or more.
 * A dry vacuum under the standard's costs flow: b is then not let below what a passing pump has.
 *
 * @param pumper only `rated_gpm` is needed
 * @returns a and b, what they rest on, residuals of the own points; issues `dry-vacuum-below-standard`,
 *   `dry-vacuum-impossible`, `rated-suction-impossible`, `test-point-impossible`, `test-points-disagree`
 * @throws RangeError if a number is out of range
 * @source own; calibrated on one confirmed cell of the classical table (seen), compared with the rest in ACCURACY.md
 */
export function calibrateRequiredHead(pumper: PumperHydraulics): RequiredHead {
  const { rated_gpm, testPoints = [] } = pumper
  requirePositive('rated_gpm', rated_gpm)
  const issues: Issue[] = []
  const rating = ratedSuction(rated_gpm)
  const suction = pumper.ratedSuction ?? rating.suction
  const ratedS_ft = suctionLossAt1000gpm_ft(suction) * (rated_gpm / 1000) ** 2
  const atRating_ft = ratingAir_ft - (pumper.ratedLift_ft ?? rating.lift_ft) - ratedS_ft

  let a_ft = ratingAir_ft - ZERO_FLOW_LIFT_FT
  let b_ft = atRating_ft - a_ft
  const { dryVacuum_inHg } = pumper
  if (dryVacuum_inHg !== undefined) {
    const altitude_ft = pumper.dryVacuumAltitude_ft ?? 0
    const fromVacuum_ft = (inHg: number) =>
      availableHead_ft({ lift_ft: feetOfWaterFromInchesOfMercury(inHg), altitude_ft, water_degF: RATING_WATER_DEGF })
    const standard_inHg = standardDryVacuum_inHg(altitude_ft)
    a_ft = fromVacuum_ft(dryVacuum_inHg)
    if (a_ft < 0) {
      issues.push(issue('dry-vacuum-impossible', 'warn', [], { dryVacuum_inHg, altitude_ft }))
      a_ft = 0
    }
    b_ft = atRating_ft - Math.min(a_ft, fromVacuum_ft(standard_inHg))
    if (dryVacuum_inHg < standard_inHg) issues.push(issue('dry-vacuum-below-standard', 'warn', [], { dryVacuum_inHg, standard_inHg }))
  }
  if (b_ft < 0) {
    issues.push(issue('rated-suction-impossible', 'warn', [], { over_ft: -b_ft, rated_gpm }))
    b_ft = 0
  }
  const basis = dryVacuum_inHg === undefined ? 'rating' : 'dry-vacuum'
  if (testPoints.length === 0) return { a_ft, b_ft, rated_gpm, basis, residualShares: [], issues }

  const scaled = testPoints.map((point) => scalePoint(point, rated_gpm, point.suction ?? suction))
  const usable = scaled.filter(({ required_ft }) => required_ft >= 0)
  scaled.forEach(({ required_ft }, index) => {
    if (required_ft >= 0) return
    const { flow_gpm = 0, lift_ft = 0 } = testPoints[index] ?? {}
    issues.push(issue('test-point-impossible', 'warn', [], { index: index + 1, over_ft: -required_ft, flow_gpm, lift_ft }))
  })
  const fit = fitPoints(usable, a_ft) ?? { a_ft, b_ft }
  const residualShares = scaled.map((point) => (point.required_ft < 0 ? undefined : residualShare(point, fit)))
  const worstShare = Math.max(0, ...residualShares.map((share) => Math.abs(share ?? 0)))
  if (worstShare > TEST_POINT_TOLERANCE_SHARE) issues.push(issue('test-points-disagree', 'warn', [], { worstShare }))
  return { ...fit, rated_gpm, basis: usable.length > 0 ? 'test-points' : basis, residualShares, issues }
}

/** Head the pump needs at a flow, [ft of water above the vapor pressure]. */
export function requiredHead_ft({ a_ft, b_ft, rated_gpm }: RequiredHead, flow_gpm: number): number {
  return a_ft + b_ft * (flow_gpm / rated_gpm) ** 2
}

/** An own point in shares of the rating: x = (Q / rated)², loss at the rated flow, heads. */
type ScaledPoint = { readonly x: number; readonly loss_ft: number; readonly available_ft: number; readonly required_ft: number }
type Fit = { readonly a_ft: number; readonly b_ft: number }

function scalePoint(point: DraftTestPoint, rated_gpm: number, suction: Parameters<typeof suctionLossAt1000gpm_ft>[0]): ScaledPoint {
  requirePositive('flow_gpm', point.flow_gpm)
  const x = (point.flow_gpm / rated_gpm) ** 2
  const loss_ft = suctionLossAt1000gpm_ft(suction) * (rated_gpm / 1000) ** 2
  const available_ft = availableHead_ft(point)
  return { x, loss_ft, available_ft, required_ft: available_ft - loss_ft * x }
}

function residualShare({ x, loss_ft, available_ft }: ScaledPoint, { a_ft, b_ft }: Fit): number {
  return Math.sqrt(Math.max(0, available_ft - a_ft) / Math.max(1e-9, loss_ft + b_ft) / x) - 1
}

function fitPoints(points: readonly ScaledPoint[], known_a_ft: number): Fit | undefined {
  if (points.length === 0) return undefined
  const heads = points.map(({ available_ft }) => available_ft)
  const wide = points.length > 1 && Math.max(...heads) - Math.min(...heads) >= LEAST_SPREAD_FT
  if (!wide) return fitSlope(points, known_a_ft, known_a_ft)
  const low_ft = ratingAir_ft - ZERO_FLOW_LIFT_RANGE_FT.high, high_ft = ratingAir_ft - ZERO_FLOW_LIFT_RANGE_FT.low
  let fit: Fit = { a_ft: known_a_ft, b_ft: 0 }
  for (let round = 0; round < 4; round++) {
    let w = 0, wx = 0, wxx = 0, wy = 0, wxy = 0
    for (const point of points) {
      const weight = weightOf(point, fit.a_ft)
      w += weight; wx += weight * point.x; wxx += weight * point.x ** 2
      wy += weight * point.required_ft; wxy += weight * point.x * point.required_ft
    }
    const spread = w * wxx - wx * wx
    const a_ft = Math.min(high_ft, Math.max(low_ft, spread > 1e-12 ? (wy * wxx - wx * wxy) / spread : known_a_ft))
    fit = fitSlope(points, a_ft, fit.a_ft)
  }
  return fit
}

/** b for a given a; where b would be negative it is 0 and a comes down to the points instead. */
function fitSlope(points: readonly ScaledPoint[], a_ft: number, weigh_a_ft: number): Fit {
  let above = 0, below = 0, w = 0, wy = 0
  for (const point of points) {
    const weight = weightOf(point, weigh_a_ft)
    above += weight * point.x * (point.required_ft - a_ft)
    below += weight * point.x ** 2
    w += weight; wy += weight * point.required_ft
  }
  return above >= 0 ? { a_ft, b_ft: above / below } : { a_ft: Math.min(a_ft, wy / w), b_ft: 0 }
}

/** A head error weighs as the flow error it makes: dQ/Q = dH / (2 · (available − a)). */
const weightOf = ({ available_ft }: ScaledPoint, a_ft: number): number => 1 / Math.max(1, available_ft - a_ft) ** 2
