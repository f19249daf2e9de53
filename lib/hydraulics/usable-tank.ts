import { requireNotNegative, requireThat } from '../issue'

/** Share of a tank's nominal volume that the rating bureau takes: spillage, under-filling, incomplete unloading. */
export const DEFAULT_USABLE_SHARE = 0.9

/**
 * Water a tender really brings each trip.
 *
 * @param tank_gal    nominal, 0 or more
 * @param usableShare 0 to 1; default 0.9; vacuum-filled tanks are credited in full
 * @returns [gal]
 * @throws RangeError if out of range
 * @source rating bureau page (seen), tests/reference/shuttle-hand-figures.json
 */
export function usableTank_gal(tank_gal: number, usableShare = DEFAULT_USABLE_SHARE): number {
  requireNotNegative('tank_gal', tank_gal)
  requireThat(usableShare >= 0 && usableShare <= 1, 'usableShare', usableShare, 'from 0 to 1')
  return tank_gal * usableShare
}
