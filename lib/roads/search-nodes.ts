import { arcCountOf, headOfArc, type RoadGraph } from './road-graph'
import type { RoadWeights } from './weigh-graph'
import { restOfArc_s, startOfArc_s, type ArcEnd } from './route-ends'
import type { Arrival, NodeBound } from './search-states'
import { freshScratch } from './search-scratch'
import { goOn, NO_TURN } from './turns'

/**
 * Cheapest way from any start to any end over plain nodes, blind to turn restrictions and
 * to turning round.
 *
 * It leaves out rules, so no legal way is cheaper; if what it finds breaks none of those
 * rules, it is the cheapest legal way, at less than half the work of a search over states.
 *
 * @returns `none` when nothing reaches an end, the arrival when it is legal, `unsure` when the way found breaks a rule
 */
export function searchNodes(
  graph: RoadGraph, weights: RoadWeights, starts: readonly ArcEnd[], ends: readonly ArcEnd[], bound: NodeBound,
): Arrival | 'none' | 'unsure' {
  const { cost_s, parent, freshIn, bound_s, heap, round } = freshScratch(graph)
  const { drive_s, arc_s, isNodeShut } = weights
  const { outStart, outArc, edgeFrom, edgeTo } = graph
  const arcCount = arcCountOf(graph)
  let best_s = Infinity
  let best: { end: ArcEnd; node: number; direct?: ArcEnd } | undefined
  const endAt = new Map<number, { end: ArcEnd; cost_s: number }[]>()
  for (const end of ends) {
    const tail = headOfArc(graph, end.arc ^ 1)
    endAt.set(tail, [...(endAt.get(tail) ?? []), { end, cost_s: startOfArc_s(weights, end) }])
  }
  starts.forEach((start, i) => {
    for (const end of ends) {
      if (end.arc !== start.arc || end.share < start.share) continue
      const cost = (end.share - start.share) * drive_s[end.arc]!
      if (cost < best_s) {
        best_s = cost
        best = { end, node: -1, direct: start }
      }
    }
    const node = headOfArc(graph, start.arc)
    const cost = restOfArc_s(graph, weights, start)
    if (freshIn[node] === round && cost_s[node]! <= cost) return
    if (freshIn[node] !== round) bound_s[node] = bound(node)
    cost_s[node] = cost
    freshIn[node] = round
    parent[node] = arcCount + i
    if (bound_s[node]! < Infinity) heap.put(node, cost + bound_s[node]!)
  })
  while (heap.size > 0 && heap.smallestKey < best_s) {
    const node = heap.take()
    if (isNodeShut[node]) continue
    const here = cost_s[node]!
    const endsHere = endAt.get(node)
    if (endsHere) {
      for (const { end, cost_s: rest } of endsHere) {
        if (here + rest >= best_s) continue
        best_s = here + rest
        best = { end, node }
      }
    }
    for (let i = outStart[node]!, last = outStart[node + 1]!; i < last; i++) {
      const arc = outArc[i]!
      const cost = here + arc_s[arc]!
      if (cost === Infinity) continue
      const head = (arc & 1 ? edgeFrom : edgeTo)[arc >>> 1]!
      if (freshIn[head] === round) {
        if (cost_s[head]! <= cost) continue
      } else {
        freshIn[head] = round
        bound_s[head] = bound(head)
      }
      cost_s[head] = cost
      parent[head] = arc
      if (bound_s[head]! < Infinity) heap.put(head, cost + bound_s[head]!)
    }
  }
  if (!best) return 'none'
  if (best.direct) return { end: best.end, start: best.direct, state: best.end.arc, cost_s: best_s, states: [best.end.arc] }
  return legalArrival(graph, weights, starts, parent, best.end, best.node, best_s)
}

function legalArrival(
  graph: RoadGraph, weights: RoadWeights, starts: readonly ArcEnd[], parent: Int32Array, end: ArcEnd, last: number, cost_s: number,
): Arrival | 'unsure' {
  const arcCount = arcCountOf(graph)
  const arcs = [end.arc]
  let node = last
  let by = parent[node]!
  while (by < arcCount) {
    arcs.push(by)
    node = headOfArc(graph, by ^ 1)
    by = parent[node]!
  }
  const start = starts[by - arcCount]
  if (!start) throw new RangeError('a way leads to no start')
  arcs.push(start.arc)
  arcs.reverse()
  const states = [start.state]
  for (let i = 1; i < arcs.length; i++) {
    const to = goOn(graph, weights, states[i - 1]!, arcs[i - 1]!, arcs[i]!)
    if (to === NO_TURN) return 'unsure'
    states.push(to)
  }
  return { end, start, state: states[states.length - 1]!, cost_s, states }
}
