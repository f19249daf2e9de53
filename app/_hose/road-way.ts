import type { Point } from '@/lib/geo'
import type { Issue } from '@/lib/issue'
import type { LegAsk } from '@/lib/plan'
import type { FoundLeg } from '@/lib/supply'
import { simplifyWay } from './simplify-way'

/** Hose follows a road this closely; a lay keeps no more corners than it needs. */
const TOLERANCE_M = 8
const MOST_POINTS = 400

/**
 * The way of a lay along roads that its source pumper can drive, from one end to the other; both ends stay where they are.
 *
 * @param find the way for one ask, as a desk of roads finds it
 * @returns points, both ends included; the issue of `find` where no road leads
 */
export function roadWay(find: (ask: LegAsk) => FoundLeg | Issue, ask: LegAsk): Point[] | Issue {
  const found = find(ask)
  if ('code' in found) return found
  let points: Point[] = [], tolerance_m = TOLERANCE_M
  do {
    points = simplifyWay([ask.from, ...found.path, ask.to], tolerance_m)
    tolerance_m *= 2
  } while (points.length > MOST_POINTS)
  return points
}
