import { arcOfState, headOfArc, stateCountOf, type RoadGraph } from './road-graph'
import { freshScratch } from './search-scratch'
import { NO_TURN, turnInto } from './turns'
import { restOfArc_s, startOfArc_s, type ArcEnd } from './route-ends'
import type { RoadWeights } from './weigh-graph'

/** One way of reaching an end: its cost, and the states from a start to it. */
export type Arrival = { readonly end: ArcEnd; readonly start: ArcEnd; readonly state: number; readonly cost_s: number; readonly states: readonly number[] }

/** Lower bound of the cost from a node to the nearest end; 0 promises nothing. */
export type NodeBound = (node: number) => number

type Found = { end: ArcEnd; state: number; cost_s: number; parent: number; start?: ArcEnd }

/**
 * Cheapest ways from any start to every end, over states: one-way, access, limits, turn
 * restrictions and the rule against turning round all hold.
 *
 * @param isAllWanted every end is followed to its own cheapest arrival in each state (for a point on the way);
 *   else only the cheapest of all is sure
 * @returns arrivals, cheapest first; empty when no end can be reached
 */
export function searchStates(
  graph: RoadGraph, weights: RoadWeights, starts: readonly ArcEnd[], ends: readonly ArcEnd[], isAllWanted: boolean, bound: NodeBound = () => 0,
): Arrival[] {
  const { cost_s, parent, freshIn, heap, round } = freshScratch(graph)
  const { drive_s, arc_s, isNodeShut, isTurnRound } = weights
  const stateCount = stateCountOf(graph)
  const found = new Map<string, Found>()
  const endsAtNode = new Map<number, ArcEnd[]>()
  for (const end of ends) {
    const tail = headOfArc(graph, end.arc ^ 1)
    endsAtNode.set(tail, [...(endsAtNode.get(tail) ?? []), end])
  }
  let best_s = Infinity
  const arrive = (candidate: Found): void => {
    const key = `${candidate.end.place.edge} ${candidate.state}`
    const before = found.get(key)
    if (before && before.cost_s <= candidate.cost_s) return
    found.set(key, candidate)
    best_s = Math.min(best_s, candidate.cost_s)
  }
  /** States beyond `stateCount` in `parent` name the start. */
  starts.forEach((start, i) => {
    for (const end of ends) {
      if (end.arc !== start.arc || end.share < start.share) continue
      arrive({ end, state: start.state, cost_s: start.cost_s + (end.share - start.share) * drive_s[end.arc]!, parent: -1, start })
    }
    const cost = start.cost_s + restOfArc_s(graph, weights, start)
    if (freshIn[start.state] === round && cost_s[start.state]! <= cost) return
    cost_s[start.state] = cost
    freshIn[start.state] = round
    parent[start.state] = stateCount + i
    heap.put(start.state, cost + bound(headOfArc(graph, start.arc)))
  })

  const isDone = (): boolean => {
    if (!isAllWanted) return heap.smallestKey >= best_s
    if (found.size === 0 || ends.some((end) => ![...found.values()].some((arrival) => arrival.end === end))) return false
    return heap.smallestKey >= Math.max(...[...found.values()].map((arrival) => arrival.cost_s))
  }
  while (heap.size > 0 && !isDone()) {
    const state = heap.take()
    const arc = arcOfState(graph, state)
    const node = headOfArc(graph, arc)
    const back = arc ^ 1
    const isShut = isNodeShut[node] === 1
    const mayTurnRound = isShut || isTurnRound[node] === 1
    const here = cost_s[state]!
    const endsHere = endsAtNode.get(node)
    for (let i = graph.outStart[node]!; i < graph.outStart[node + 1]!; i++) {
      const next = graph.outArc[i]!
      if (drive_s[next] === Infinity || (next === back ? !mayTurnRound : isShut)) continue
      const to = turnInto(graph, state, next)
      if (to === NO_TURN) continue
      if (endsHere) {
        for (const end of endsHere) {
          if (end.arc === next) arrive({ end, state: to, cost_s: here + startOfArc_s(weights, end), parent: state })
        }
      }
      const cost = here + arc_s[next]!
      if (freshIn[to] === round && cost_s[to]! <= cost) continue
      const key = cost + bound(headOfArc(graph, next))
      if (key === Infinity) continue
      cost_s[to] = cost
      freshIn[to] = round
      parent[to] = state
      heap.put(to, key)
    }
  }
  return [...found.values()].sort((a, b) => a.cost_s - b.cost_s).map((arrival) => withStates(arrival, parent, stateCount, starts))
}

/** States of a way, from its start to the last arc. */
function withStates({ end, state, cost_s, parent: before, start: direct }: Found, parent: Int32Array, stateCount: number, starts: readonly ArcEnd[]): Arrival {
  if (direct) return { end, start: direct, state, cost_s, states: [state] }
  const states = [state]
  let at = before
  while (at < stateCount) {
    states.push(at)
    at = parent[at]!
  }
  const start = starts[at - stateCount]
  if (!start) throw new RangeError('a way leads to no start')
  return { end, start, state, cost_s, states: states.reverse() }
}
