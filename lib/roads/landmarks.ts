import { headOfArc, type RoadGraph } from './road-graph'
import { startOfArc_s, type ArcEnd } from './route-ends'
import type { NodeBound } from './search-states'
import { StateHeap } from './state-heap'
import { weighGraph, type RoadWeights } from './weigh-graph'

const LANDMARK_COUNT = 8
/** Landmarks looked at in one query. */
const ACTIVE_COUNT = 3
/** Below this a plain search is as quick. */
const FEWEST_NODES = 1500

/** `table[node * 2 · count + 2 · landmark]`: time from the landmark to the node; + 1: from the node to the landmark. */
type Landmarks = { readonly count: number; readonly table: Float64Array }

const byGraph = new WeakMap<RoadGraph, Landmarks>()

/**
 * Lower bound of the time from a node to the nearest end, by the triangle inequality over
 * a few far places.
 *
 * Times to and from the landmarks are those of a vehicle nothing stops, so they hold for
 * every vehicle, but not where a note makes a road quicker: then the bound is 0.
 *
 * @source landmark lower bounds after A. V. Goldberg and C. Harrelson, 2005
 */
export function landmarkBound(graph: RoadGraph, weights: RoadWeights, starts: readonly ArcEnd[], ends: readonly ArcEnd[]): NodeBound {
  if (weights.isEased || graph.nodeLatE7.length < FEWEST_NODES) return () => 0
  const { count, table } = landmarksOf(graph)
  const width = 2 * count
  const endNodes = ends.map((end) => ({ node: headOfArc(graph, end.arc ^ 1), cost_s: startOfArc_s(weights, end) }))
  const startNode = starts[0] ? headOfArc(graph, starts[0].arc) : 0
  const active: { from: number; fromConstant: number; toConstant: number; bound: number }[] = []
  for (let landmark = 0; landmark < count; landmark++) {
    const from = 2 * landmark
    let fromConstant = Infinity, toConstant = -Infinity
    for (const { node, cost_s } of endNodes) {
      fromConstant = Math.min(fromConstant, table[node * width + from]! + cost_s)
      toConstant = Math.max(toConstant, table[node * width + from + 1]! - cost_s)
    }
    // An end that a landmark cannot reach, or that cannot reach it, is told nothing by it.
    if (fromConstant === Infinity) fromConstant = -Infinity
    const bound = Math.max(fromConstant - table[startNode * width + from]!, table[startNode * width + from + 1]! - toConstant)
    active.push({ from, fromConstant, toConstant, bound: Number.isFinite(bound) ? bound : 0 })
  }
  active.sort((a, b) => b.bound - a.bound)
  const used = active.slice(0, ACTIVE_COUNT)
  const offsets = Int32Array.from(used, ({ from }) => from)
  const fromConstants = Float64Array.from(used, ({ fromConstant }) => fromConstant)
  const toConstants = Float64Array.from(used, ({ toConstant }) => toConstant)
  return (node) => {
    let bound = 0
    const row = node * width
    for (let i = 0; i < offsets.length; i++) {
      const at = row + offsets[i]!
      const ahead = fromConstants[i]! - table[at]!
      if (ahead > bound) bound = ahead
      const behind = table[at + 1]! - toConstants[i]!
      if (behind > bound) bound = behind
    }
    return bound
  }
}

function landmarksOf(graph: RoadGraph): Landmarks {
  const known = byGraph.get(graph)
  if (known) return known
  const free = weighGraph(graph, { gross_lb: 1, height_ft: 0.01, width_ft: 0.01 })
  const nodeCount = graph.nodeLatE7.length
  const table = new Float64Array(nodeCount * 2 * LANDMARK_COUNT)
  const heap = new StateHeap(nodeCount)
  // Each landmark is the place furthest from those before, within the main component; the first is furthest from any place.
  const main = graph.componentSize.indexOf(Math.max(...graph.componentSize))
  const nearest_s = new Float64Array(nodeCount).fill(Infinity)
  let place = furthest(graph, nodeTimes(graph, free, graph.component.indexOf(main), false, heap), main)
  for (let landmark = 0; landmark < LANDMARK_COUNT; landmark++) {
    const from = nodeTimes(graph, free, place, false, heap)
    const to = nodeTimes(graph, free, place, true, heap)
    for (let node = 0; node < nodeCount; node++) {
      table[node * 2 * LANDMARK_COUNT + 2 * landmark] = from[node]!
      table[node * 2 * LANDMARK_COUNT + 2 * landmark + 1] = to[node]!
      nearest_s[node] = Math.min(nearest_s[node]!, from[node]!)
    }
    place = furthest(graph, nearest_s, main)
  }
  const landmarks = { count: LANDMARK_COUNT, table }
  byGraph.set(graph, landmarks)
  return landmarks
}

function furthest(graph: RoadGraph, times_s: Float64Array, main: number): number {
  let found = graph.component.indexOf(main)
  for (let node = 0; node < times_s.length; node++) {
    if (graph.component[node] === main && times_s[node]! < Infinity && times_s[node]! > times_s[found]!) found = node
  }
  return found
}

/** Times from a node to all, or from all to it, blind to turn restrictions and barriers: never above the true ones. */
function nodeTimes(graph: RoadGraph, weights: RoadWeights, root: number, isBackward: boolean, heap: StateHeap): Float64Array {
  const times = new Float64Array(graph.nodeLatE7.length).fill(Infinity)
  times[root] = 0
  heap.put(root, 0)
  const { arc_s } = weights
  while (heap.size > 0) {
    const node = heap.take()
    for (let i = graph.outStart[node]!; i < graph.outStart[node + 1]!; i++) {
      const out = graph.outArc[i]!
      const next = headOfArc(graph, out)
      const time = times[node]! + arc_s[isBackward ? out ^ 1 : out]!
      if (time >= times[next]!) continue
      times[next] = time
      heap.put(next, time)
    }
  }
  return times
}
