import type { RoadPlace } from './find-nearest'
import type { RoadGraph } from './road-graph'
import { arcEndsOf, type ArcEnd } from './route-ends'
import { searchStates, type Arrival } from './search-states'
import type { RoadWeights } from './weigh-graph'

/**
 * Leg by leg, keeping every direction in which a stop can be passed, each at its cheapest:
 * the cheapest way to a stop need not be the one that goes on best.
 */
export function arrivalsOverStops(graph: RoadGraph, weights: RoadWeights, stops: readonly RoadPlace[][]): Arrival[] | undefined {
  let starts = arcEndsOf(graph, weights, stops[0] ?? [])
  const before = new Map<ArcEnd, Arrival>()
  let arrivals: Arrival[] = []
  for (const [i, places] of stops.slice(1).entries()) {
    const isLast = i === stops.length - 2
    arrivals = searchStates(graph, weights, starts, arcEndsOf(graph, weights, places), !isLast)
    starts = arrivals.map((arrival) => {
      const start: ArcEnd = { ...arrival.end, state: arrival.state, cost_s: arrival.cost_s }
      before.set(start, arrival)
      return start
    })
  }
  const chain: Arrival[] = []
  for (let arrival = arrivals[0]; arrival; arrival = before.get(arrival.start)) chain.unshift(arrival)
  return chain.length > 0 ? chain : undefined
}
