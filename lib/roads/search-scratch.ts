import { stateCountOf, type RoadGraph } from './road-graph'
import { StateHeap } from './state-heap'

/** Tables a search writes to, kept with the graph so a query allocates nothing. A round number marks what is fresh. */
export type Scratch = {
  readonly cost_s: Float64Array
  readonly parent: Int32Array
  readonly freshIn: Uint32Array
  readonly bound_s: Float64Array
  readonly heap: StateHeap
  round: number
}

const byGraph = new WeakMap<RoadGraph, Scratch>()

/** Scratch tables of a graph, made ready for a new search. */
export function freshScratch(graph: RoadGraph): Scratch {
  let scratch = byGraph.get(graph)
  if (!scratch) {
    const size = Math.max(stateCountOf(graph), graph.nodeLatE7.length)
    scratch = {
      cost_s: new Float64Array(size), parent: new Int32Array(size), freshIn: new Uint32Array(size), bound_s: new Float64Array(size),
      heap: new StateHeap(size), round: 0,
    }
    byGraph.set(graph, scratch)
  }
  scratch.heap.clear()
  if (++scratch.round === 0xffffffff) {
    scratch.freshIn.fill(0)
    scratch.round = 1
  }
  return scratch
}
