import { requireNotNegative } from '../issue'
import type { DraftPlace, PumperHydraulics } from './pumper'
import { availableHead_ft, calibrateRequiredHead, requiredHead_ft } from './required-head'
import { suctionLossAt1000gpm_ft, type SuctionSetup } from './suction-setup'

/**
 * Highest lift at which the suction side still gives a flow.
 *
 *   lift = H_atm − H_vap − S · (Q/1000)² − a − b · (Q/rated)²
 *
 * @param place    its lift is not looked at
 * @param flow_gpm 0 or more
 * @returns [ft]; below 0 where the water would have to stand above the intake
 * @throws RangeError if a number is out of range
 * @source the law of draftCapacity, solved for the lift
 */
export function highestLiftFor_ft(
  { pumper, suction, place }: { readonly pumper: PumperHydraulics; readonly suction: SuctionSetup | readonly SuctionSetup[]; readonly place: DraftPlace }, flow_gpm: number,
): number {
  requireNotNegative('flow_gpm', flow_gpm)
  const loss_ft = suctionLossAt1000gpm_ft(suction) * (flow_gpm / 1000) ** 2
  return availableHead_ft({ ...place, lift_ft: 0 }) - loss_ft - requiredHead_ft(calibrateRequiredHead(pumper), flow_gpm)
}
