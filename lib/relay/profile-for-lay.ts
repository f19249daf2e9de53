import { issue, requirePositive, type Issue } from '../issue'
import type { GroundPoint } from './spec'

/**
 * Ground under a lay out of the ground under its way: hose is never pulled straight, so it is spread evenly along the way.
 *
 * @param way       ground by level distance, two points or more
 * @param length_ft of hose, above 0
 * @returns ground by feet of hose, the places given along the way by feet of hose, and `relay-lay-short` (warn) where the
 *   hose is shorter than the way
 * @throws RangeError if the length is not positive
 */
export function profileForLay(way: readonly GroundPoint[], length_ft: number, places_ft: readonly number[] = []): { readonly profile: GroundPoint[]; readonly places_ft: number[]; readonly issues: Issue[] } {
  requirePositive('length_ft', length_ft)
  const whole_ft = way[way.length - 1]?.distance_ft ?? 0
  const factor = whole_ft > 0 ? length_ft / whole_ft : 1
  return {
    profile: way.map(({ distance_ft, height_ft }) => ({ distance_ft: distance_ft * factor, height_ft })),
    places_ft: places_ft.map((place_ft) => place_ft * factor),
    issues: length_ft < whole_ft * 0.999 ? [issue('relay-lay-short', 'warn', [], { length_ft, short_ft: whole_ft - length_ft })] : [],
  }
}
