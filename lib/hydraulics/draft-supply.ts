import { draftCapacity, type DraftAsk } from './draft-capacity'

/**
 * What a pumper at draft gives at each discharge pressure, as `fillRates` and a relay want it.
 *
 * @param draft pumper, suction and place, without the pressure
 * @returns function of the discharge pressure, [psi] → [gpm]; never rising
 * @throws RangeError as draftCapacity, when called
 */
export function draftSupply({ pumper, suction, place }: Omit<DraftAsk, 'ask'>): (discharge_psi: number) => number {
  return (discharge_psi) => draftCapacity({ pumper, suction, place, ask: { discharge_psi } }).flow_gpm
}
