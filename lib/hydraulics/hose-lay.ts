import { requireNotNegative, requireThat } from '../issue'
import { FITTING_FROM_GPM, applianceLoss_psi } from './appliance-loss'
import { elevation_psi } from './elevation-pressure'
import { hoseCoefficient } from './hose-coefficient'
import { parallelCoefficient } from './parallel-coefficient'

/** Equal lines of one hose from a pump to a place, with what stands in the way. */
export type HoseLay = {
  readonly size_in: number
  readonly length_ft: number
  /** Equal lines side by side; default 1. */
  readonly lineCount?: number
  /** Measured or maker's C of one line; default by size. */
  readonly coefficient?: number
  /** Far end above the near end; default 0. */
  readonly rise_ft?: number
  /** Wyes, siameses, manifolds on the way, each passing the whole flow; default 0. */
  readonly fittingCount?: number
}

/** Loss of the lay's hose at 1 gpm, [psi per gpm²]. */
export function layFriction_psiPerGpm2({ size_in, length_ft, lineCount = 1, coefficient }: HoseLay): number {
  requireNotNegative('length_ft', length_ft)
  requireThat(Number.isInteger(lineCount) && lineCount >= 1, 'lineCount', lineCount, 'a whole number of 1 or more')
  const one = coefficient ?? hoseCoefficient(size_in).coefficient
  return (parallelCoefficient(Array.from({ length: lineCount }, () => one)) * length_ft) / 1e6
}

/**
 * Pressure a lay needs at its near end beyond what it gives at its far end.
 *
 *   loss = FL + appliances + elevation
 *
 * @param lay      hose, fittings and rise
 * @param flow_gpm through all its lines, 0 or more
 * @returns [psi]; may be negative downhill
 * @throws RangeError if a number is out of range
 * @source frictionLoss_psi, applianceLoss_psi, elevation_psi
 */
export function layLoss_psi(lay: HoseLay, flow_gpm: number): number {
  requireNotNegative('flow_gpm', flow_gpm)
  const fittings_psi = (lay.fittingCount ?? 0) * applianceLoss_psi('fitting', flow_gpm)
  return layFriction_psiPerGpm2(lay) * flow_gpm ** 2 + fittings_psi + elevation_psi(lay.rise_ft ?? 0)
}

/**
 * Most flow through a lay for the pressure at hand: layLoss_psi solved for Q.
 *
 * Fittings step from 0 to 10 psi at 350 gpm, so a lay may sit exactly at 350 gpm.
 *
 * @param lay       hose, fittings and rise
 * @param inlet_psi pressure at the near end, 0 or more
 * @param outlet_psi pressure wanted at the far end, 0 or more
 * @returns [gpm]; 0 when the rise takes it all; Infinity for a lay of no length
 * @throws RangeError if a number is out of range
 * @source frictionLoss_psi
 */
export function layFlow_gpm(lay: HoseLay, inlet_psi: number, outlet_psi = 0): number {
  requireNotNegative('inlet_psi', inlet_psi)
  requireNotNegative('outlet_psi', outlet_psi)
  return flowForSpare_gpm(layFriction_psiPerGpm2(lay), lay.fittingCount ?? 0, inlet_psi - outlet_psi - elevation_psi(lay.rise_ft ?? 0))
}

/**
 * Flow that uses up a pressure in a resistance and its fittings: r Q² + fittings = spare.
 *
 * @param resistance    r, [psi per gpm²], 0 or more
 * @param fittingCount  each 10 psi from 350 gpm on
 * @param spare_psi     pressure to use up; 0 or less gives no flow
 * @returns [gpm]; Infinity without any resistance
 */
export function flowForSpare_gpm(resistance: number, fittingCount: number, spare_psi: number): number {
  if (spare_psi <= 0) return 0
  const flowWith = (fittings_psi: number) => Math.sqrt(Math.max(0, spare_psi - fittings_psi) / resistance)
  if (resistance === 0) return Infinity
  const above = flowWith(fittingCount * applianceLoss_psi('fitting', FITTING_FROM_GPM))
  if (above >= FITTING_FROM_GPM) return above
  return Math.min(flowWith(0), fittingCount > 0 ? FITTING_FROM_GPM : Infinity)
}
