import { requireNotNegative } from '../issue'
import { GALLONS_PER_CUBIC_FOOT } from '../units'

/** Square feet in an acre, by definition. */
export const SQUARE_FEET_PER_ACRE = 43_560
const FARM_POND_SHAPE = 0.4

/**
 * Water of a pond that a strainer can reach, as a lens of even depth.
 *
 *   V = area · usable depth
 *
 * @param area_sqft  of the surface, 0 or more
 * @param usable_ft  water above the strainer, less the cover it needs, 0 or more
 * @returns [gal]
 * @throws RangeError if negative
 * @source regional fire journal (method seen), 325,851 gal an acre-foot (calc), tests/reference/sources.json
 */
export function pondLens_gal(area_sqft: number, usable_ft: number): number {
  requireNotNegative('area_sqft', area_sqft)
  requireNotNegative('usable_ft', usable_ft)
  return area_sqft * usable_ft * GALLONS_PER_CUBIC_FOOT
}

/**
 * All the water in a farm pond by its shape.
 *
 *   V = 0.4 · area · greatest depth
 *
 * @param area_sqft   of the surface, 0 or more
 * @param greatest_ft depth, 0 or more
 * @returns [gal]
 * @throws RangeError if negative
 * @source USDA handbook on ponds (memory, moderate)
 */
export function farmPond_gal(area_sqft: number, greatest_ft: number): number {
  return FARM_POND_SHAPE * pondLens_gal(area_sqft, greatest_ft)
}
