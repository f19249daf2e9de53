import { requireNotNegative, requirePositive, requireThat } from '../issue'

/** The quick rule is not meant above these. Fire academy course (memory, high). */
export const QUICK_RULE_MOST_GPM = 1_000
export const QUICK_RULE_MOST_SHARE = 0.5

/**
 * Attack flow by the national fire academy's quick rule.
 *
 *   gpm = (L · W / 3) · floors · share involved · (1 + 0.25 · exposures)
 *
 * For interior attack: not meant above 50 % involvement or about 1,000 gpm.
 *
 * @param floorArea_sqft of one floor, above 0
 * @param floorCount     burning or threatened floors, each computed and summed, 1 or more
 * @param involvedShare  above 0 to 1
 * @param exposureCount  0 or more
 * @returns [gpm]
 * @throws RangeError if out of range
 * @source trade drill article (seen), exposures and limits from the course (memory, high), tests/reference/needed-flow.json
 */
export function academyFlow_gpm(floorArea_sqft: number, floorCount = 1, involvedShare = 1, exposureCount = 0): number {
  requirePositive('floorArea_sqft', floorArea_sqft)
  requireThat(Number.isInteger(floorCount) && floorCount >= 1, 'floorCount', floorCount, 'a whole number of 1 or more')
  requireThat(involvedShare > 0 && involvedShare <= 1, 'involvedShare', involvedShare, 'above 0, up to 1')
  requireNotNegative('exposureCount', exposureCount)
  return (floorArea_sqft / 3) * floorCount * involvedShare * (1 + 0.25 * exposureCount)
}

/**
 * Flow to knock down a fire in a closed room with a fog stream, Iowa State rule.
 *
 *   gpm = V / 100
 *
 * For the largest single open space, not the whole building.
 *
 * @param volume_cuft of the space, above 0
 * @returns [gpm]
 * @throws RangeError if not positive
 * @source regional fire journal (seen), tests/reference/needed-flow.json
 */
export function iowaFlow_gpm(volume_cuft: number): number {
  requirePositive('volume_cuft', volume_cuft)
  return volume_cuft / 100
}

/** Areas at which the fitted curves are still curves of fires: the second falls again beyond its top at 16,154 sq ft. */
export const IITRI_OTHER_MOST_SQFT = 0.42 / (2 * 1.3e-5)

/**
 * Flow by the curves that a research institute fitted to real fires.
 *
 *   residential: 9e-5 A² + 0.50 A      other: −1.3e-5 A² + 0.42 A
 *
 * Beyond its top at 16,154 sq ft the second curve is held at the top.
 *
 * @param area_sqft     fire area, above 0
 * @param isResidential which curve
 * @returns [gpm]
 * @throws RangeError if not positive
 * @source IITRI formula on a fire-protection slide outline (seen), tests/reference/needed-flow.json
 */
export function instituteFlow_gpm(area_sqft: number, isResidential: boolean): number {
  requirePositive('area_sqft', area_sqft)
  if (isResidential) return 9e-5 * area_sqft ** 2 + 0.5 * area_sqft
  const area = Math.min(area_sqft, IITRI_OTHER_MOST_SQFT)
  return -1.3e-5 * area ** 2 + 0.42 * area
}
