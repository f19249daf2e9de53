import type { Point } from '../geo'
import type { Issue } from '../issue'
import { landmarkBound } from './landmarks'
import { passedOverCaution, placesOnRoad, ROAD_REACH_FT } from './place-on-road'
import type { RoadPlace } from './find-nearest'
import type { RoadGraph } from './road-graph'
import type { Route } from './route'
import { arcEndsOf } from './route-ends'
import { routeFromPieces } from './route-from-pieces'
import { joinedPieces, piecesOf } from './route-pieces'
import { searchNodes } from './search-nodes'
import { arrivalsOverStops } from './search-legs'
import { searchStates, type Arrival } from './search-states'
import type { RoadWeights } from './weigh-graph'
import { whyNoRoute } from './why-no-route'

export type RouteOptions = { readonly reach_ft?: number }

/**
 * The quickest way for the weighed vehicle from one place to another, over points on the
 * way in their order.
 *
 * One-way rules, access, limits, barriers and turn restrictions hold. A route turns round
 * only where the road ends for this vehicle; past a point on the way it goes on in the
 * direction it came. At its two ends a vehicle may leave or arrive either way.
 *
 * @param graph   the district's roads
 * @param weights of this graph, for the vehicle as it is on this way
 * @returns the route, or a blocking issue: `route-off-network`, `route-blocked` (what stands in the way, in order), `route-unconnected`
 */
export function findRoute(
  graph: RoadGraph, weights: RoadWeights, from: Point, to: Point, via: readonly Point[] = [], { reach_ft = ROAD_REACH_FT }: RouteOptions = {},
): Route | Issue {
  const stops: RoadPlace[][] = []
  const points = [from, ...via, to]
  for (const [i, point] of points.entries()) {
    const end = i === 0 ? 'from' : i === points.length - 1 ? 'to' : `via ${i}`
    const places = placesOnRoad(graph, weights, point, end, reach_ft)
    if (!Array.isArray(places)) return places
    stops.push(places)
  }
  const arrivals = via.length === 0 ? directArrival(graph, weights, stops) : arrivalsOverStops(graph, weights, stops)
  if (!arrivals) return whyNoRoute(graph, weights, stops)
  const first = arrivals[0], last = arrivals[arrivals.length - 1]
  if (!first || !last) throw new RangeError('a route has no legs')
  const route = routeFromPieces(graph, weights, joinedPieces(arrivals.map((arrival) => piecesOf(graph, arrival))), {
    from: first.start.place, to: last.end.place,
  })
  const passedOver = [
    ...passedOverCaution(graph, weights, from, first.start.place, 'from'),
    ...passedOverCaution(graph, weights, to, last.end.place, 'to'),
  ]
  return passedOver.length > 0 ? { ...route, cautions: [...passedOver, ...route.cautions] } : route
}

export const isRoute = (found: Route | Issue): found is Route => !('code' in found)

function directArrival(graph: RoadGraph, weights: RoadWeights, stops: readonly RoadPlace[][]): Arrival[] | undefined {
  const starts = arcEndsOf(graph, weights, stops[0] ?? []), ends = arcEndsOf(graph, weights, stops[1] ?? [])
  const bound = landmarkBound(graph, weights, starts, ends)
  const found = searchNodes(graph, weights, starts, ends, bound)
  if (found === 'none') return undefined
  if (found !== 'unsure') return [found]
  const [arrival] = searchStates(graph, weights, starts, ends, false, bound)
  return arrival ? [arrival] : undefined
}
