import { requireNotNegative, requirePositive } from '../issue'
import { GALLONS_PER_CUBIC_FOOT, METRES_PER_FOOT, SECONDS_PER_MINUTE } from '../units'

/** Standard gravity, 32.174 ft/s². */
export const GRAVITY_FTPERS2 = 9.80665 / METRES_PER_FOOT

/** Area of a round bore, [square feet]. */
export const boreArea_sqft = (bore_in: number): number => (Math.PI / 4) * (bore_in / 12) ** 2

/**
 * Mean speed of water in a full round bore.
 *
 *   V = Q / A
 *
 * @param flow_gpm 0 or more
 * @param bore_in  inside diameter, above 0
 * @returns [ft/s]
 * @throws RangeError if an argument is out of range
 * @source definition
 */
export function velocity_ftPerS(flow_gpm: number, bore_in: number): number {
  requireNotNegative('flow_gpm', flow_gpm)
  requirePositive('bore_in', bore_in)
  return flow_gpm / GALLONS_PER_CUBIC_FOOT / SECONDS_PER_MINUTE / boreArea_sqft(bore_in)
}

/**
 * Velocity head of water in a full round bore.
 *
 *   H = V² / 2g
 *
 * @param flow_gpm 0 or more
 * @param bore_in  inside diameter, above 0
 * @returns [ft of water]; 2.0 for 1,000 gpm in 6 in
 * @throws RangeError if an argument is out of range
 * @source definition; values in tests/reference/hard-suction.json (calc)
 */
export function velocityHead_ft(flow_gpm: number, bore_in: number): number {
  return velocity_ftPerS(flow_gpm, bore_in) ** 2 / (2 * GRAVITY_FTPERS2)
}
