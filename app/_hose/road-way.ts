import type { Point } from '@/lib/geo'
import type { Issue } from '@/lib/issue'
import { findRoute, isRoute, weighGraph, type RoadGraph, type RoadNoteLike } from '@/lib/roads'
import { simplifyWay } from './simplify-way'

/** Hose follows a road this closely; a lay keeps no more corners than it needs. */
const TOLERANCE_M = 8
const MOST_POINTS = 400

export type RoadWayVehicle = { readonly gross_lb?: number; readonly height_ft?: number; readonly width_ft?: number }

/**
 * The way of a lay along roads that its source pumper can drive, from one end to the other; both ends stay where they are.
 *
 * @returns points, both ends included; the issue of findRoute where no road leads
 */
export function roadWay(graph: RoadGraph, notes: readonly RoadNoteLike[], vehicle: RoadWayVehicle, from: Point, to: Point): Point[] | Issue {
  const route = findRoute(graph, weighGraph(graph, vehicle, notes), from, to)
  if (!isRoute(route)) return route
  let points: Point[] = [], tolerance_m = TOLERANCE_M
  do {
    points = simplifyWay([from, ...route.path.map(({ lat, lon }) => ({ lat, lon })), to], tolerance_m)
    tolerance_m *= 2
  } while (points.length > MOST_POINTS)
  return points
}
