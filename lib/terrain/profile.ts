import { alongM, type Point } from '../geo'
import { requirePositive } from '../issue'
import { feetFromMetres } from '../units'
import { findHeight } from './height-at'
import type { HeightGrid } from './height-grid'

/** A place along a way. Height and doubt are absent where the elevation data has none. */
export type ProfilePoint = {
  readonly distance_ft: number
  readonly point: Point
  readonly height_ft?: number
  readonly doubt_ft?: number
}

/** A height along a way, wherever the way lies. */
export type ProfileHeight = Pick<ProfilePoint, 'distance_ft' | 'height_ft' | 'doubt_ft'>

/** A way shorter than its own step needs no points between; longer ones have no more than this. */
const MOST_POINTS = 20_000

/**
 * Heights along a way: at each of its corners, and between them no further apart than the step.
 *
 * Distances are level ones. Hose on a slope of one in ten is half a per cent longer than its level distance: `groundLength_ft`.
 *
 * @param grid    of a district
 * @param path    two or more corners of the way
 * @param step_ft most distance between two points, above 0; made larger where the way would have more than 20,000
 * @returns points by rising distance; the first at 0
 * @throws RangeError if the step is not positive
 */
export function profileAlong(grid: HeightGrid, path: readonly Point[], step_ft: number): ProfilePoint[] {
  requirePositive('step_ft', step_ft)
  const along_ft = alongM(path).map(feetFromMetres)
  const spaced_ft = Math.max(step_ft, (along_ft.at(-1) ?? 0) / MOST_POINTS)
  const points: ProfilePoint[] = []
  path.forEach((from, i) => {
    const to = path[i + 1], travelled_ft = along_ft[i] ?? 0
    const leg_ft = (along_ft[i + 1] ?? travelled_ft) - travelled_ft
    // A corner given twice is one place.
    if (to === undefined || leg_ft > 0) points.push(profilePoint(grid, from, travelled_ft))
    if (!to || leg_ft === 0) return
    const parts = Math.ceil(leg_ft / spaced_ft)
    for (let k = 1; k < parts; k++) {
      const share = k / parts
      const point = { lat: from.lat + share * (to.lat - from.lat), lon: from.lon + share * (to.lon - from.lon) }
      points.push(profilePoint(grid, point, travelled_ft + share * leg_ft))
    }
  })
  return points
}

function profilePoint(grid: HeightGrid, point: Point, distance_ft: number): ProfilePoint {
  const ground = findHeight(grid, point)
  return { distance_ft, point, ...ground }
}

/** Length over the ground, up and down: what a hose along the way needs. Gaps count as level. */
export function groundLength_ft(profile: readonly ProfilePoint[]): number {
  let length_ft = 0
  profile.forEach((to, i) => {
    const from = profile[i - 1]
    if (!from) return
    const rise_ft = to.height_ft === undefined || from.height_ft === undefined ? 0 : to.height_ft - from.height_ft
    length_ft += Math.hypot(to.distance_ft - from.distance_ft, rise_ft)
  })
  return length_ft
}
