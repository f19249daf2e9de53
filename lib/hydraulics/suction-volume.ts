import { requireNotNegative } from '../issue'
import { GALLONS_PER_CUBIC_FOOT } from '../units'
import { boreArea_sqft } from './velocity-head'

/**
 * Water, or before priming air, that a length of hose holds.
 *
 *   V = A · L · 7.48
 *
 * @param size_in   bore, above 0
 * @param length_ft 0 or more
 * @returns [gal]; 29.4 for 20 ft of 6 in
 * @throws RangeError if length is negative
 * @source definition, tests/reference/hard-suction.json (calc)
 */
export function hoseVolume_gal(size_in: number, length_ft: number): number {
  requireNotNegative('length_ft', length_ft)
  return boreArea_sqft(size_in) * length_ft * GALLONS_PER_CUBIC_FOOT
}
