import { requireNotNegative } from '../issue'
import { pressureCorrection_psi } from './net-pressure'
import { curveFlow_gpm, type PumpCurve } from './pump-curve'
import type { RequiredHead } from './required-head'

/** What the layout asks of the pump: a net pressure, or a pressure on the discharge gauge. */
export type PressureAsk = { readonly netPressure_psi: number } | { readonly discharge_psi: number }

/**
 * Most flow the suction side passes, in closed form because every loss goes with the square of the flow.
 *
 *   Q = 1000 · √((head − a) / (S + b · (1000 / rated)²))
 *
 * @param head_ft  head left for hose and pump
 * @param loss_ft  S, suction loss at 1,000 gpm
 * @param required a and b of the pump
 * @returns [gpm]; 0 when the head does not reach a
 */
export function suctionSideFlow_gpm(head_ft: number, loss_ft: number, { a_ft, b_ft, rated_gpm }: RequiredHead): number {
  if (head_ft <= a_ft) return 0
  return 1000 * Math.sqrt((head_ft - a_ft) / Math.max(1e-9, loss_ft + b_ft * (1000 / rated_gpm) ** 2))
}

/**
 * Most flow on the pump's curve; with a discharge pressure asked, the flow at which curve and pressure correction agree.
 *
 * @param curve   from pumpCurve
 * @param ask     net or discharge pressure, 0 or more
 * @param lift_ft at the place
 * @param loss_ft suction loss at 1,000 gpm
 * @returns [gpm]
 * @throws RangeError if the pressure is negative
 */
export function pumpSideFlow_gpm(curve: PumpCurve, ask: PressureAsk, lift_ft: number, loss_ft: number): number {
  if ('netPressure_psi' in ask) {
    requireNotNegative('netPressure_psi', ask.netPressure_psi)
    return curveFlow_gpm(curve, ask.netPressure_psi)
  }
  requireNotNegative('discharge_psi', ask.discharge_psi)
  const spare_gpm = (flow_gpm: number) =>
    curveFlow_gpm(curve, Math.max(0, ask.discharge_psi + pressureCorrection_psi(lift_ft, loss_ft * (flow_gpm / 1000) ** 2))) - flow_gpm
  let low = 0, high = curve.flows_gpm[0] ?? 0
  if (spare_gpm(high) >= 0) return high
  for (let i = 0; i < 40; i++) {
    const middle = (low + high) / 2
    if (spare_gpm(middle) >= 0) low = middle
    else high = middle
  }
  return low
}
