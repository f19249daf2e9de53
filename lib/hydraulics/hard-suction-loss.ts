import { requireNotNegative } from '../issue'
import { suctionLossAt1000gpm_ft, type SuctionSetup } from './suction-setup'

/**
 * Friction and entrance loss in hard suction, strainer included.
 *
 *   loss = S · (Q / 1000)²      S from suctionLossAt1000gpm_ft
 *
 * @param setup and flow_gpm: the whole flow through all its lines, 0 or more
 * @returns [ft of water]
 * @throws RangeError if an argument is out of range
 * @source pumper-test standard's table of suction losses (memory, moderate confidence), tests/reference/hard-suction.json
 */
export function hardSuctionLoss_ft({ flow_gpm, ...setup }: SuctionSetup & { readonly flow_gpm: number }): number {
  requireNotNegative('flow_gpm', flow_gpm)
  return suctionLossAt1000gpm_ft(setup) * (flow_gpm / 1000) ** 2
}
