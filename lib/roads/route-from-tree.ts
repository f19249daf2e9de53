import type { Point } from '../geo'
import type { Issue } from '../issue'
import { passedOverCaution, placesOnRoad, ROAD_REACH_FT } from './place-on-road'
import { endOfLink, type RouteTree } from './one-to-all'
import { arcOfState, headOfArc, type RoadGraph } from './road-graph'
import type { Route } from './route'
import { arcEndsOf, restOfArc_s, startOfArc_s, type ArcEnd } from './route-ends'
import { routeFromPieces } from './route-from-pieces'
import { piecesOf } from './route-pieces'
import type { Arrival } from './search-states'
import { goOn, NO_TURN } from './turns'
import { whyNoRoute } from './why-no-route'

/**
 * The quickest way between a tree's fixed place and another: the same route, issues and
 * cautions as `findRoute`, without a search.
 */
export function routeFromTree(tree: RouteTree, point: Point, reach_ft = ROAD_REACH_FT): Route | Issue {
  const { graph, weights, direction } = tree
  const places = placesOnRoad(graph, weights, point, direction === 'from' ? 'to' : 'from', reach_ft)
  if (!Array.isArray(places)) return places
  const others = arcEndsOf(graph, weights, places)
  const arrival = bestArrival(tree, others)
  if (!arrival) {
    const fixed = tree.ends.map(({ place }) => place)
    return whyNoRoute(graph, weights, direction === 'from' ? [fixed, places] : [places, fixed])
  }
  const [from, to] = direction === 'from' ? [tree.point, point] : [point, tree.point]
  const route = routeFromPieces(graph, weights, piecesOf(graph, arrival), { from: arrival.start.place, to: arrival.end.place })
  return {
    ...route,
    cautions: [
      ...passedOverCaution(graph, weights, from, arrival.start.place, 'from'),
      ...passedOverCaution(graph, weights, to, arrival.end.place, 'to'),
      ...route.cautions,
    ],
  }
}

/** Travel time between a tree's fixed place and another, getting under way and stopping left out; undefined where there is no way. */
export function findDriveFromTree_s(tree: RouteTree, point: Point, reach_ft = ROAD_REACH_FT): number | undefined {
  const places = placesOnRoad(tree.graph, tree.weights, point, 'to', reach_ft)
  return Array.isArray(places) ? bestArrival(tree, arcEndsOf(tree.graph, tree.weights, places))?.cost_s : undefined
}

function bestArrival(tree: RouteTree, others: readonly ArcEnd[]): Arrival | undefined {
  let best: Arrival | undefined
  const offer = (arrival: Arrival): void => {
    if (!best || arrival.cost_s < best.cost_s) best = arrival
  }
  for (const other of others) {
    for (const fixed of tree.ends) {
      const [start, end] = tree.direction === 'from' ? [fixed, other] : [other, fixed]
      if (start.arc !== end.arc || end.share < start.share) continue
      offer({ start, end, state: end.arc, cost_s: (end.share - start.share) * tree.weights.drive_s[end.arc]!, states: [end.arc] })
    }
    if (tree.direction === 'from') offerFrom(tree, other, offer)
    else offerTo(tree, other, offer)
  }
  return best
}

const statesOf = (graph: RoadGraph, arc: number): number[] => [arc, ...(graph.ghostsOfArc.get(arc) ?? [])]

function offerFrom(tree: RouteTree, end: ArcEnd, offer: (arrival: Arrival) => void): void {
  const { graph, weights, cost_s, link } = tree
  const node = headOfArc(graph, end.arc ^ 1)
  let best = -1, bestCost = Infinity, bestState = -1
  for (let i = graph.outStart[node]!; i < graph.outStart[node + 1]!; i++) {
    for (const state of statesOf(graph, graph.outArc[i]! ^ 1)) {
      if (cost_s[state]! >= bestCost) continue
      const to = goOn(graph, weights, state, arcOfState(graph, state), end.arc)
      if (to === NO_TURN) continue
      best = state
      bestCost = cost_s[state]!
      bestState = to
    }
  }
  if (best < 0) return
  const states = [bestState]
  let at = best
  while (at >= 0) {
    states.push(at)
    at = link[at]!
  }
  const start = tree.ends[endOfLink(at)]
  if (start) offer({ start, end, state: bestState, cost_s: bestCost + startOfArc_s(weights, end), states: states.reverse() })
}

function offerTo(tree: RouteTree, start: ArcEnd, offer: (arrival: Arrival) => void): void {
  const { graph, weights, cost_s, link } = tree
  const node = headOfArc(graph, start.arc)
  let best = -1, bestCost = Infinity
  for (let i = graph.outStart[node]!; i < graph.outStart[node + 1]!; i++) {
    const next = graph.outArc[i]!
    const to = goOn(graph, weights, start.arc, start.arc, next)
    if (to === NO_TURN || cost_s[to]! >= bestCost) continue
    best = to
    bestCost = cost_s[to]!
  }
  if (best < 0) return
  const states: number[] = [start.arc]
  let at = best
  while (at >= 0) {
    states.push(at)
    at = link[at]!
  }
  const end = tree.ends[endOfLink(at)]
  if (end) offer({ start, end, state: states[states.length - 1]!, cost_s: restOfArc_s(graph, weights, start) + bestCost, states })
}
