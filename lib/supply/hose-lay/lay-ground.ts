import { alongM, type Point } from '../../geo'
import { issue, type Issue } from '../../issue'
import type { Lay } from '../../plan'
import type { GroundPoint } from '../../relay'
import { fillGaps, type ProfileHeight } from '../../terrain'
import { feetFromMetres } from '../../units'

/** Where the heights under a lay come from: elevation, elevation bent to a measured rise, the entered rise alone, or nobody. */
export type LayHeights = 'terrain' | 'terrain-measured' | 'entered' | 'none'

/** Ground under the way of a lay, by level feet from the source pumper. */
export type LayGround = {
  readonly way_ft: number
  /** Level feet to each point of the way. */
  readonly points_ft: readonly number[]
  readonly profile: readonly GroundPoint[]
  readonly heights: LayHeights
  /** Far end above the source pumper. */
  readonly rise_ft: number
  /** How far that rise may be off; absent where nobody says. */
  readonly doubt_ft?: number
  readonly issues: readonly Issue[]
}

/** A lay shorter than this has both ends at one place. */
const LEAST_WAY_FT = 10

/** Level feet to each point of a way. */
export const wayDistances_ft = (points: readonly Point[]): number[] => alongM(points).map(feetFromMetres)

/**
 * Ground under a lay: elevation where there is some, an entered rise where there is none.
 *
 *   measured rise, elevation under it: h(x) + (measured − h's own rise) · x / way
 *
 * A measured rise wins over elevation, which then only gives the shape between the ends; a rise that is not measured is used
 * only without elevation. With neither the ground counts as level, and that is said.
 *
 * @param heights along the lay's points, from profileAlong; absent: the district has no elevation
 * @returns ground; issues `lay-way-short` (block), `lay-heights-none`, `terrain-gaps` (warn), `lay-rise-unused`, `lay-rise-doubt` (note)
 */
export function layGround(lay: Lay, heights?: readonly ProfileHeight[]): LayGround {
  const points_ft = wayDistances_ft(lay.points)
  const way_ft = points_ft[points_ft.length - 1] ?? 0
  const issues: Issue[] = way_ft < LEAST_WAY_FT ? [issue('lay-way-short', 'block', [lay.id])] : []
  const filled = heights ? fillGaps(heights) : undefined
  const ground = rising(filled?.points ?? [])
  const first = ground[0], last = ground[ground.length - 1]
  if (!first || !last || ground.length < 2) {
    if (lay.rise_ft === undefined) issues.push(issue('lay-heights-none', 'warn', [lay.id]))
    const rise_ft = lay.rise_ft ?? 0
    return { way_ft, points_ft, rise_ft, heights: lay.rise_ft === undefined ? 'none' : 'entered', profile: way_ft > 0 ? [{ distance_ft: 0, height_ft: 0 }, { distance_ft: way_ft, height_ft: rise_ft }] : [], issues }
  }
  issues.push(...(filled?.issues ?? []).map((one) => ({ ...one, subjectIds: [lay.id] })))
  const own_ft = last.height_ft - first.height_ft
  if (lay.rise_ft !== undefined && lay.evidence?.rise_ft?.mark === 'measured') {
    const bend_ft = lay.rise_ft - own_ft
    return { way_ft, points_ft, rise_ft: lay.rise_ft, heights: 'terrain-measured', profile: ground.map(({ distance_ft, height_ft }) => ({ distance_ft, height_ft: height_ft + (bend_ft * distance_ft) / last.distance_ft })), issues }
  }
  if (lay.rise_ft !== undefined) issues.push(issue('lay-rise-unused', 'note', [lay.id], { rise_ft: lay.rise_ft, own_ft }))
  const doubts = [heights?.[0]?.doubt_ft, heights?.[heights.length - 1]?.doubt_ft]
  const doubt_ft = doubts.every((doubt) => doubt !== undefined) ? Math.hypot(...doubts) : undefined
  return { way_ft, points_ft, rise_ft: own_ft, heights: 'terrain', profile: ground, ...(doubt_ft !== undefined && { doubt_ft }), issues }
}

/** Only points that lie further on than those before. */
const rising = (points: readonly GroundPoint[]): GroundPoint[] => {
  const kept: GroundPoint[] = []
  for (const point of points) if (point.distance_ft > (kept[kept.length - 1]?.distance_ft ?? -1)) kept.push(point)
  return kept
}
