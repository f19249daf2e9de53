import { curveFlow_gpm, pumpCurve } from '../hydraulics'
import { requirePositive } from '../issue'

/**
 * Rating a relay pumper needs by the trade's hand rule, which takes the discharge pressure as all its own work.
 *
 *   rated = Q / (share of the rating at that pressure)
 *
 * planRelay counts what arrives at the intake, so it may find a smaller pumper enough; this figure stands beside it.
 *
 * @param flow_gpm      above 0
 * @param discharge_psi above 0, no more than 250
 * @returns [gpm]; Infinity above the last rating point
 * @throws RangeError if a number is not positive
 * @source lesson plan Relay Pumping Operations (seen-2nd), tests/reference/relay.json
 */
export function ratingNeeded_gpm(flow_gpm: number, discharge_psi: number): number {
  requirePositive('flow_gpm', flow_gpm)
  requirePositive('discharge_psi', discharge_psi)
  const share = curveFlow_gpm(pumpCurve(1000), discharge_psi) / 1000
  return share > 0 ? flow_gpm / share : Infinity
}
