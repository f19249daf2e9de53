import { requireNotNegative } from '../issue'
import type { DraftAsk } from './draft-capacity'
import { suctionSideFlow_gpm } from './draft-sides'
import { pressureCorrection_psi } from './net-pressure'
import { findPressureForFlow_psi, pumpCurve } from './pump-curve'
import { availableHead_ft, calibrateRequiredHead } from './required-head'
import { suctionLossAt1000gpm_ft } from './suction-setup'

/**
 * Highest discharge pressure at which a pumper at draft still gives a flow: draftSupply solved for the pressure, in
 * closed form.
 *
 *   discharge = net(Q) − (lift + suction loss) / 2.3, where the suction passes Q at all
 *
 * @param draft pumper, suction and place
 * @returns function of the flow, [gpm, 0 or more] → [psi], never rising; undefined where no pressure gives that flow
 * @throws RangeError as draftCapacity
 * @source own; laws of draftCapacity
 */
export function draftDischarge_psi({ pumper, suction, place }: Omit<DraftAsk, 'ask'>): (flow_gpm: number) => number | undefined {
  const loss_ft = suctionLossAt1000gpm_ft(suction)
  const suctionSide_gpm = suctionSideFlow_gpm(availableHead_ft(place), loss_ft, calibrateRequiredHead(pumper))
  const curve = pumpCurve(pumper.rated_gpm, pumper.curvePoints, pumper.overRating)
  return (flow_gpm) => {
    requireNotNegative('flow_gpm', flow_gpm)
    const net_psi = flow_gpm > suctionSide_gpm ? undefined : findPressureForFlow_psi(curve, flow_gpm)
    if (net_psi === undefined) return undefined
    const discharge_psi = net_psi - pressureCorrection_psi(place.lift_ft, loss_ft * (flow_gpm / 1000) ** 2)
    return discharge_psi < 0 ? undefined : discharge_psi
  }
}
