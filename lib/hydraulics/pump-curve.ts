import { issue, requireNotNegative, requirePositive, type Issue } from '../issue'

/** A flow the pump has shown at a net pressure. */
export type CurvePoint = { readonly netPressure_psi: number; readonly flow_gpm: number }

/** Most flow by net pump pressure: points by rising pressure, flows never rising, slopes for the cubic between them. */
export type PumpCurve = {
  readonly pressures_psi: readonly number[]
  readonly flows_gpm: readonly number[]
  readonly slopes: readonly number[]
  readonly issues: readonly Issue[]
}

/** Rating points: share of the rated flow at net pump pressure. */
export const ratingPoints = [
  { netPressure_psi: 150, flowShare: 1 }, { netPressure_psi: 200, flowShare: 0.7 }, { netPressure_psi: 250, flowShare: 0.5 },
] as const

/** Net pressure at which the assumed 110 % is reached, when asked for. */
const OVER_RATING_PSI = 120
const OVER_RATING_SHARE = 1.1

/**
 * Curve of the most a pump moves at each net pressure.
 *
 * Default: 100 % at 150 psi, 70 % at 200, 50 % at 250; below 150 psi no more than 100 %. The pump's own points replace
 * it over their range; above their highest pressure the rating points go on, scaled to meet them. Between points a cubic
 * that never overshoots (Fritsch and Carlson). A flow shown at a higher pressure also counts at every lower one.
 *
 * @param rated_gpm  above 0
 * @param points     own test points, any order
 * @param overRating true: up to 110 % of rating from 120 psi down, which nobody has tested: marked assumed
 * @throws RangeError if a number is out of range
 * @source rating points, NFPA 1901/1911 as stated in lesson plans (seen-2nd), tests/reference/pump-curve.json; 110 % assumed
 */
export function pumpCurve(rated_gpm: number, points: readonly CurvePoint[] = [], overRating = false): PumpCurve {
  requirePositive('rated_gpm', rated_gpm)
  for (const { netPressure_psi, flow_gpm } of points) {
    requireNotNegative('netPressure_psi', netPressure_psi)
    requireNotNegative('flow_gpm', flow_gpm)
  }
  const issues: Issue[] = []
  const own = [...points].sort((a, b) => a.netPressure_psi - b.netPressure_psi || b.flow_gpm - a.flow_gpm)
    .filter((point, index, all) => index === 0 || point.netPressure_psi > (all[index - 1]?.netPressure_psi ?? 0))
  const rated = ratingPoints.map(({ netPressure_psi, flowShare }) => ({ netPressure_psi, flow_gpm: flowShare * rated_gpm }))
  const highest = own[own.length - 1]
  const scale = highest ? highest.flow_gpm / (ratedFlowAt(highest.netPressure_psi) * rated_gpm) : 1
  const above = rated.filter(({ netPressure_psi }) => netPressure_psi > (highest?.netPressure_psi ?? -1))
    .map(({ netPressure_psi, flow_gpm }) => ({ netPressure_psi, flow_gpm: flow_gpm * Math.min(1, scale) }))
  const all = [...own, ...above]
  if (overRating && own.length === 0) {
    all.unshift({ netPressure_psi: OVER_RATING_PSI, flow_gpm: OVER_RATING_SHARE * rated_gpm })
    issues.push(issue('over-rating-assumed', 'note', [], { flow_gpm: OVER_RATING_SHARE * rated_gpm, netPressure_psi: OVER_RATING_PSI }))
  }
  const flows_gpm = all.map(({ flow_gpm }) => flow_gpm)
  for (let i = flows_gpm.length - 2; i >= 0; i--) {
    const next = flows_gpm[i + 1] ?? 0
    if ((flows_gpm[i] ?? 0) < next) {
      flows_gpm[i] = next
      issues.push(issue('curve-points-rise', 'warn', [], { netPressure_psi: all[i]?.netPressure_psi ?? 0, flow_gpm: next }))
    }
  }
  const pressures_psi = all.map(({ netPressure_psi }) => netPressure_psi)
  return { pressures_psi, flows_gpm, slopes: monotoneSlopes(pressures_psi, flows_gpm), issues }
}

/**
 * Most flow at a net pressure.
 *
 * @param curve           from pumpCurve
 * @param netPressure_psi 0 or more
 * @returns [gpm]; the first point's flow below it, 0 above the last point: nobody has shown any
 */
export function curveFlow_gpm(curve: PumpCurve, netPressure_psi: number): number {
  const { pressures_psi, flows_gpm, slopes } = curve
  const first = pressures_psi[0] ?? 0
  if (netPressure_psi <= first) return flows_gpm[0] ?? 0
  let i = 1
  while (i < pressures_psi.length && netPressure_psi > (pressures_psi[i] ?? 0)) i++
  if (i >= pressures_psi.length) return 0
  const x0 = pressures_psi[i - 1] ?? 0, h = (pressures_psi[i] ?? 0) - x0
  const t = (netPressure_psi - x0) / h
  const y0 = flows_gpm[i - 1] ?? 0, y1 = flows_gpm[i] ?? 0, d0 = slopes[i - 1] ?? 0, d1 = slopes[i] ?? 0
  const s = 1 - t
  return s * s * ((1 + 2 * t) * y0 + t * h * d0) + t * t * ((3 - 2 * t) * y1 - s * h * d1)
}

/** Highest net pressure at which the curve still gives this flow; undefined if it never does. */
export function findPressureForFlow_psi(curve: PumpCurve, flow_gpm: number): number | undefined {
  const last = curve.pressures_psi[curve.pressures_psi.length - 1] ?? 0
  if (curveFlow_gpm(curve, 0) < flow_gpm) return undefined
  if (curveFlow_gpm(curve, last) >= flow_gpm) return last
  let low = 0, high = last
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2
    if (curveFlow_gpm(curve, middle) >= flow_gpm) low = middle
    else high = middle
  }
  return low
}

/** Straight lines between the rating points, flat outside: only to scale them to a pump's own points. */
function ratedFlowAt(netPressure_psi: number): number {
  if (netPressure_psi <= 150) return 1
  if (netPressure_psi <= 200) return 1 - (0.3 * (netPressure_psi - 150)) / 50
  if (netPressure_psi <= 250) return 0.7 - (0.2 * (netPressure_psi - 200)) / 50
  return 0.5
}

/** Slopes of a cubic through points that keeps their order: harmonic means inside, three-point ends held within bounds. */
function monotoneSlopes(x: readonly number[], y: readonly number[]): number[] {
  const count = x.length
  if (count < 2) return [0]
  const at = (list: readonly number[], i: number) => list[i] ?? 0
  const h = Array.from({ length: count - 1 }, (_, i) => at(x, i + 1) - at(x, i))
  const m = h.map((width, i) => (at(y, i + 1) - at(y, i)) / width)
  if (count === 2) return [at(m, 0), at(m, 0)]
  const slopes = Array.from({ length: count }, () => 0)
  for (let i = 1; i < count - 1; i++) {
    const before = at(m, i - 1), after = at(m, i)
    if (before * after <= 0) continue
    const w1 = 2 * at(h, i) + at(h, i - 1), w2 = at(h, i) + 2 * at(h, i - 1)
    slopes[i] = (w1 + w2) / (w1 / before + w2 / after)
  }
  slopes[0] = endSlope(at(h, 0), at(h, 1), at(m, 0), at(m, 1))
  slopes[count - 1] = endSlope(at(h, count - 2), at(h, count - 3), at(m, count - 2), at(m, count - 3))
  return slopes
}

function endSlope(h0: number, h1: number, m0: number, m1: number): number {
  const slope = ((2 * h0 + h1) * m0 - h0 * m1) / (h0 + h1)
  if (slope * m0 <= 0) return 0
  return m0 * m1 <= 0 && Math.abs(slope) > 3 * Math.abs(m0) ? 3 * m0 : slope
}
