import { requirePositive } from '../issue'

/** A primer: what it moves free, and the vacuum that stops it. */
export type Primer = {
  /** Air moved at no vacuum, counted at the pressure in the pump. */
  readonly capacity_gpm: number
  /** Vacuum, in feet of water, at which it moves nothing more. */
  readonly stall_ft: number
}

/**
 * What a primer moves at a vacuum: falls in a straight line to nothing at its stall.
 *
 *   S(v) = S₀ · (1 − v / v_stall), not below 0
 *
 * @param primer    capacity and stall, both above 0
 * @param vacuum_ft v, feet of water below the atmosphere, 0 or more
 * @returns volume at the pressure in the pump, [gpm]
 * @throws RangeError if the primer's numbers are not above 0
 * @source the straight line is judgement: a positive-displacement primer keeps its volume and leaks in
 *   proportion to the vacuum; common practice gives only the two ends
 */
export function primerCapacity_gpm(primer: Primer, vacuum_ft: number): number {
  requirePositive('capacity_gpm', primer.capacity_gpm)
  requirePositive('stall_ft', primer.stall_ft)
  return primer.capacity_gpm * Math.min(1, Math.max(0, 1 - vacuum_ft / primer.stall_ft))
}
