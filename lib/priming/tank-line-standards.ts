import { vortexSubmergence_ft } from '../hydraulics'
import { requirePositive } from '../issue'
import { tankToPumpCoefficient } from './tank-loop'

/** Least tank-to-pump flow of a pumper, held until four fifths of the tank are gone. Source: NFPA 1901, from memory (high). */
export const leastTankToPump_gpm = (tank_gal: number): number => (tank_gal < 500 ? 250 : 500)

/** Least tank fill line: 1 in under 1,000 gal (NFPA 1901, from memory, high), 2 in from there (training article citing NFPA 1901, seen second hand). */
export const leastTankFill_in = (tank_gal: number): 1 | 2 => (tank_gal < 1000 ? 1 : 2)

/**
 * Coefficient of the tank-to-pump line that just passes its acceptance: its flow, at the
 * level where four fifths of the tank are gone, with the most vacuum the eye can hold.
 *
 *   C = Q / √(H_atm − H_cavitation + z(1/5))
 *
 * @param tank_gal        decides the flow, above 0
 * @param most_ft         H_atm − H_cavitation, above 0
 * @param tankHeight_ft   water surface above the eye with a fifth of the tank left, 0 or more
 * @returns the smallest a passing line can be, [gpm per √ft]; a usual line is better, up to twice
 * @throws RangeError if a number is out of range
 */
export function tankToPumpThatPasses(tank_gal: number, most_ft: number, tankHeight_ft: number): number {
  requirePositive('tank_gal', tank_gal)
  requirePositive('most_ft', most_ft)
  return tankToPumpCoefficient(leastTankToPump_gpm(tank_gal), most_ft, tankHeight_ft)
}

/**
 * The vortex formula S = D·(1 + 2.3·Fr) as a straight line in the flow, for the drill's strainer.
 *
 * @param bore_in of the open end, above 0
 * @returns cover at rest and more for each 100 gpm, [ft]
 * @source ANSI/HI 9.8 as quoted, see `vortexSubmergence_ft`
 */
export function strainerCoverLine(bore_in: number): { readonly coverAtRest_ft: number; readonly coverPer100Gpm_ft: number } {
  const coverAtRest_ft = vortexSubmergence_ft(0, bore_in)
  return { coverAtRest_ft, coverPer100Gpm_ft: vortexSubmergence_ft(100, bore_in) - coverAtRest_ft }
}
