import type { Point } from '../geo'
import type { Issue } from '../issue'
import type { RoadPlace } from './find-nearest'
import { placesOnRoad, ROAD_REACH_FT } from './place-on-road'
import { arcOfState, headOfArc, stateCountOf, tailOfArc, type RoadGraph } from './road-graph'
import { arcEndsOf, restOfArc_s, startOfArc_s, type ArcEnd } from './route-ends'
import { StateHeap } from './state-heap'
import { NO_TURN, turnInto } from './turns'
import type { RoadWeights } from './weigh-graph'

/** Which end of all routes is fixed. */
export type TreeDirection = 'from' | 'to'

/** Quickest ways between one fixed place and every place of the district. */
export type RouteTree = {
  readonly graph: RoadGraph
  readonly weights: RoadWeights
  readonly direction: TreeDirection
  readonly point: Point
  readonly ends: readonly ArcEnd[]
  /** Direction `from`: time from the place to the end of each state. `to`: time from the beginning of each state to the place. */
  readonly cost_s: Float64Array
  /** State before (`from`) or after (`to`) on the way; −2 − i at the fixed end i; −1 where there is no way. */
  readonly link: Int32Array
}

/** No way leads here. */
const NO_LINK = -1
const linkOfEnd = (end: number): number => -2 - end
/** The end behind a link that `linkOfEnd` made. */
export const endOfLink = (link: number): number => -2 - link

/**
 * Quickest ways between a fixed place and every place, for a site that is dragged: one
 * search, then each route in well under a frame by `routeFromTree`, equal to `findRoute`.
 *
 * @returns the tree, or the blocking issue `route-off-network`
 */
export function oneToAll(graph: RoadGraph, weights: RoadWeights, point: Point, direction: TreeDirection, reach_ft = ROAD_REACH_FT): RouteTree | Issue {
  const places = placesOnRoad(graph, weights, point, direction, reach_ft)
  if (!Array.isArray(places)) return places
  return treeFromPlaces(graph, weights, point, places, direction)
}

function treeFromPlaces(graph: RoadGraph, weights: RoadWeights, point: Point, places: readonly RoadPlace[], direction: TreeDirection): RouteTree {
  const stateCount = stateCountOf(graph)
  const ends = arcEndsOf(graph, weights, places)
  const cost_s = new Float64Array(stateCount).fill(Infinity)
  const link = new Int32Array(stateCount).fill(NO_LINK)
  const heap = new StateHeap(stateCount)
  const offer = (state: number, cost: number, by: number): void => {
    if (cost >= cost_s[state]!) return
    cost_s[state] = cost
    link[state] = by
    heap.put(state, cost)
  }
  const statesOf = (arc: number): readonly number[] => [arc, ...(graph.ghostsOfArc.get(arc) ?? [])]
  if (direction === 'from') ends.forEach((end, i) => offer(end.state, restOfArc_s(graph, weights, end), linkOfEnd(i)))
  else ends.forEach((end, i) => statesOf(end.arc).forEach((state) => offer(state, startOfArc_s(weights, end), linkOfEnd(i))))
  const expand = direction === 'from' ? forwardFrom : backwardFrom
  for (let state = heap.take(); state >= 0; state = heap.take()) expand(graph, weights, state, cost_s[state]!, offer)
  return { graph, weights, direction, point, ends, cost_s, link }
}

type Offer = (state: number, cost_s: number, by: number) => void

function forwardFrom(graph: RoadGraph, { drive_s, arc_s, isNodeShut, isTurnRound }: RoadWeights, state: number, cost: number, offer: Offer): void {
  const arc = arcOfState(graph, state)
  const node = headOfArc(graph, arc)
  const back = arc ^ 1
  const isShut = isNodeShut[node] === 1
  const mayTurnRound = isShut || isTurnRound[node] === 1
  for (let i = graph.outStart[node]!; i < graph.outStart[node + 1]!; i++) {
    const next = graph.outArc[i]!
    if (drive_s[next] === Infinity || (next === back ? !mayTurnRound : isShut)) continue
    const to = turnInto(graph, state, next)
    if (to !== NO_TURN) offer(to, cost + arc_s[next]!, state)
  }
}

function backwardFrom(graph: RoadGraph, { drive_s, arc_s, isNodeShut, isTurnRound }: RoadWeights, state: number, cost: number, offer: Offer): void {
  const arc = arcOfState(graph, state)
  const node = tailOfArc(graph, arc)
  const back = arc ^ 1
  const isShut = isNodeShut[node] === 1
  const mayTurnRound = isShut || isTurnRound[node] === 1
  for (let i = graph.outStart[node]!; i < graph.outStart[node + 1]!; i++) {
    const before = graph.outArc[i]! ^ 1
    if (drive_s[before] === Infinity || (before === back ? !mayTurnRound : isShut)) continue
    const here = cost + arc_s[before]!
    if (turnInto(graph, before, arc) === state) offer(before, here, state)
    for (const ghost of graph.ghostsOfArc.get(before) ?? []) if (turnInto(graph, ghost, arc) === state) offer(ghost, here, state)
  }
}
