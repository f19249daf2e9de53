import { requireNotNegative, requirePositive } from '../issue'

/**
 * Flow from a round opening, the trade's constant for gallons, inches and psi.
 *
 *   Q = 29.84 · Cd · d² · √p
 *
 * @param diameter_in       of the opening, above 0
 * @param pressure_psi      head or pitot pressure at it, 0 or more
 * @param dischargeFactor   Cd, above 0: about 1 smooth bore, 0.9 rounded, 0.8 square, 0.7 projecting
 * @returns [gpm]
 * @throws RangeError if an argument is out of range
 * @source hydrant form of the nozzle formula (seen), tests/reference/openings.json
 */
export function orificeFlow_gpm(diameter_in: number, pressure_psi: number, dischargeFactor: number): number {
  requirePositive('diameter_in', diameter_in)
  requireNotNegative('pressure_psi', pressure_psi)
  requirePositive('dischargeFactor', dischargeFactor)
  return 29.84 * dischargeFactor * diameter_in ** 2 * Math.sqrt(pressure_psi)
}

/**
 * Flow of a smooth-bore nozzle.
 *
 *   gpm = 29.7 · d² · √NP
 *
 * @param tip_in             diameter, above 0
 * @param nozzlePressure_psi 0 or more
 * @returns [gpm]
 * @throws RangeError if an argument is out of range
 * @source three sources (seen); rounded values on a city engineer's card (seen), tests/reference/openings.json
 */
export function smoothBoreFlow_gpm(tip_in: number, nozzlePressure_psi: number): number {
  return orificeFlow_gpm(tip_in, nozzlePressure_psi, 29.7 / 29.84)
}

/** How a hydrant's outlet meets its barrel. */
export type HydrantOutlet = 'smooth' | 'square' | 'projecting'
export const hydrantOutletFactor: Readonly<Record<HydrantOutlet, number>> = { smooth: 0.9, square: 0.8, projecting: 0.7 }

/** Flow from an open hydrant outlet by its pitot pressure: orificeFlow_gpm with the factor of the outlet. [gpm] */
export function hydrantPitotFlow_gpm(outlet_in: number, pitot_psi: number, outlet: HydrantOutlet = 'smooth'): number {
  return orificeFlow_gpm(outlet_in, pitot_psi, hydrantOutletFactor[outlet])
}
