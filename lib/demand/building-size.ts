import { requireNotNegative, requirePositive, requireThat } from '../issue'
import type { Building } from './building'

/** Area of one floor, [sq ft]. */
export function floorArea_sqft({ length_ft, width_ft }: Pick<Building, 'length_ft' | 'width_ft'>): number {
  requirePositive('length_ft', length_ft)
  requirePositive('width_ft', width_ft)
  return length_ft * width_ft
}

/**
 * Volume of a building as the rural water supply standard counts it.
 *
 *   V = L · W · (Σ storeys + ridge / 2)
 *
 * @param building storeys at least one, each above 0; ridge 0 or more
 * @returns [cu ft]
 * @throws RangeError if out of range
 * @source code-training article on NFPA 1142, 2017 (seen-2nd), tests/reference/needed-flow.json
 */
export function buildingVolume_cuft(building: Pick<Building, 'length_ft' | 'width_ft' | 'storeyHeights_ft' | 'ridge_ft'>): number {
  const { storeyHeights_ft, ridge_ft } = building
  requireThat(storeyHeights_ft.length > 0, 'storeyHeights_ft', '[]', 'at least one storey')
  requireNotNegative('ridge_ft', ridge_ft)
  const height_ft = storeyHeights_ft.reduce((total, storey_ft) => {
    requirePositive('storeyHeights_ft', storey_ft)
    return total + storey_ft
  }, ridge_ft / 2)
  return floorArea_sqft(building) * height_ft
}
