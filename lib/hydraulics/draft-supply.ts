import type { DraftAsk } from './draft-capacity'
import { pumpSideFlow_gpm, suctionSideFlow_gpm } from './draft-sides'
import { pumpCurve } from './pump-curve'
import { availableHead_ft, calibrateRequiredHead } from './required-head'
import { suctionLossAt1000gpm_ft } from './suction-setup'

/**
 * What a pumper at draft gives at each discharge pressure, as `fillRates` and a relay want it: the flow of
 * `draftCapacity`, with all that does not change with the pressure worked out once.
 *
 * @param draft pumper, suction and place, without the pressure
 * @returns function of the discharge pressure, [psi] → [gpm]; never rising
 * @throws RangeError as draftCapacity
 */
export function draftSupply({ pumper, suction, place }: Omit<DraftAsk, 'ask'>): (discharge_psi: number) => number {
  const loss_ft = suctionLossAt1000gpm_ft(suction)
  const suctionSide_gpm = suctionSideFlow_gpm(availableHead_ft(place), loss_ft, calibrateRequiredHead(pumper))
  const curve = pumpCurve(pumper.rated_gpm, pumper.curvePoints, pumper.overRating)
  return (discharge_psi) => Math.min(suctionSide_gpm, pumpSideFlow_gpm(curve, { discharge_psi }, place.lift_ft, loss_ft))
}
