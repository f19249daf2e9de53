import { requireThat } from '../issue'
import { psiFromFeetOfWater } from '../units'

/**
 * Pressure that a rise costs, or a fall gives.
 *
 *   EL = 0.433 psi · rise
 *
 * @param rise_ft outlet above the pump; negative when it lies below
 * @returns [psi], same sign as the rise
 * @throws RangeError if not finite
 * @source NWCG Firefighter Math table 3.1: 0.434 exact, 0.5 in the field (seen), tests/reference/hose-friction.json
 */
export function elevation_psi(rise_ft: number): number {
  requireThat(Number.isFinite(rise_ft), 'rise_ft', rise_ft, 'a number')
  return psiFromFeetOfWater(rise_ft)
}
