import { headOfArc, type RoadGraph } from './road-graph'
import type { RoadWeights } from './weigh-graph'

/** No way from this state into that arc. */
export const NO_TURN = -1

/**
 * State in which one is after turning from a state into an arc that begins where it ends,
 * by the turn tables alone.
 */
export function turnInto(graph: RoadGraph, state: number, arc: number): number {
  let row = graph.firstTurn[state]!
  if (row < 0) return arc
  const { turnFrom, turnArc, turnTo } = graph
  for (; turnFrom[row] === state; row++) if (turnArc[row] === arc) return turnTo[row]!
  return arc
}

/**
 * State after going on from a state, of the given arc, into the next arc: NO_TURN when the
 * next arc cannot be driven, the node between cannot be passed, a restriction forbids it,
 * or it turns round where there is another way on.
 */
export function goOn(graph: RoadGraph, weights: RoadWeights, state: number, arc: number, next: number): number {
  if (weights.drive_s[next] === Infinity) return NO_TURN
  const isBack = next === (arc ^ 1)
  const node = headOfArc(graph, arc)
  if (weights.isNodeShut[node] ? !isBack : isBack && !weights.isTurnRound[node]) return NO_TURN
  return turnInto(graph, state, next)
}
