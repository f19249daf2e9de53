import type { Point } from '../geo'
import { issue, type Issue } from '../issue'
import { findNearest, nearestPlaces, type RoadPlace } from './find-nearest'
import type { RoadGraph } from './road-graph'
import { nameOfEdge } from './route-limits'
import { isEdgeUsable, reasonOfArc, type RoadWeights } from './weigh-graph'

/** A pin further than this from any road the vehicle can use is not on the road network. */
export const ROAD_REACH_FT = 1000

/**
 * Places on the usable road nearest to a point.
 *
 * @param reach_ft how far off a road may be
 * @returns places, nearest first, or the blocking issue `route-off-network`: distance to the nearest usable
 *   road (if any), the nearest road of all with its distance and why it cannot be used
 */
export function placesOnRoad(graph: RoadGraph, weights: RoadWeights, point: Point, end: string, reach_ft: number): RoadPlace[] | Issue {
  const places = nearestPlaces(graph, point, (edge) => isEdgeUsable(weights, edge))
  const [first] = places
  if (first && first.distance_ft <= reach_ft) return places
  const nearest = findNearest(graph, point)
  return issue('route-off-network', 'block', [], {
    end, lat: point.lat, lon: point.lon,
    ...(first ? { distance_ft: first.distance_ft, name: nameOfEdge(graph, first.edge) } : {}),
    ...(nearest ? { nearest_ft: nearest.distance_ft, nearestName: nameOfEdge(graph, nearest.edge), reason: reasonOfArc(weights, 2 * nearest.edge) } : {}),
  })
}

/** How much nearer an unusable road must be before it is worth a word. */
const NEARER_FT = 30

/** Note that a nearer road was passed over because this vehicle cannot use it. */
export function passedOverCaution(graph: RoadGraph, weights: RoadWeights, point: Point, place: RoadPlace, end: string): Issue[] {
  const nearest = findNearest(graph, point)
  if (!nearest || isEdgeUsable(weights, nearest.edge) || nearest.distance_ft + NEARER_FT > place.distance_ft) return []
  return [
    issue('route-nearer-road-unusable', 'warn', [], {
      end, reason: reasonOfArc(weights, 2 * nearest.edge), name: nameOfEdge(graph, nearest.edge), nearest_ft: nearest.distance_ft, distance_ft: place.distance_ft,
    }),
  ]
}
