import { requireNotNegative, requirePositive } from '../issue'
import { SECONDS_PER_MINUTE } from '../units'

/** Safe average speed the handbook's travel formula takes. */
export const HANDBOOK_AVERAGE_MPH = 35
const START_AND_STOP_MIN = 0.65

/**
 * Travel time of a tender by the handbook, for one leg.
 *
 *   T(min) = 0.65 + (60 / mph) · D
 *
 * 60/35 is 1.714; the handbook prints 1.70.
 *
 * @param distance_mi D, road miles, 0 or more
 * @param average_mph above 0; default 35
 * @returns [s]; 0 for no distance
 * @throws RangeError if out of range
 * @source lesson plan after the driver/operator handbook (seen-2nd), NFPA 1142 annex (memory, high), tests/reference/shuttle-hand-figures.json
 */
export function handbookTravel_s(distance_mi: number, average_mph = HANDBOOK_AVERAGE_MPH): number {
  requireNotNegative('distance_mi', distance_mi)
  requirePositive('average_mph', average_mph)
  return distance_mi === 0 ? 0 : SECONDS_PER_MINUTE * (START_AND_STOP_MIN + (60 / average_mph) * distance_mi)
}

/**
 * Travel out and back. Each leg starts and stops once: 0.65 min is counted twice, as the NFPA 1142 annex does.
 *
 * The lesson plan counts it once for the whole shuttle distance: 39 s less.
 *
 * @param empty_mi  to the fill site
 * @param loaded_mi back; default the same
 * @returns [s]
 */
export function handbookRoundTrip_s(empty_mi: number, loaded_mi = empty_mi, average_mph = HANDBOOK_AVERAGE_MPH): number {
  return handbookTravel_s(empty_mi, average_mph) + handbookTravel_s(loaded_mi, average_mph)
}
