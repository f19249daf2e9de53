import type { Point } from '../geo'
import { DEGREES_E7 } from '../osm'
import { alongM, pointAlong } from '../geo'
import { arcOfState, type RoadGraph } from './road-graph'
import type { Arrival } from './search-states'

/** A stretch of one arc; shares run along the arc. */
export type RoutePiece = { readonly arc: number; readonly fromShare: number; readonly toShare: number }

/** Stretches of an arrival, in order. */
export function piecesOf(graph: RoadGraph, { start, end, states }: Arrival): RoutePiece[] {
  return states.map((state, i) => ({
    arc: arcOfState(graph, state),
    fromShare: i === 0 ? start.share : 0,
    toShare: i === states.length - 1 ? end.share : 1,
  }))
}

/** Joins the stretches of consecutive legs; one that was cut at a point on the way becomes whole again. */
export function joinedPieces(legs: readonly (readonly RoutePiece[])[]): RoutePiece[] {
  const joined: RoutePiece[] = []
  for (const piece of legs.flat()) {
    const before = joined[joined.length - 1]
    if (before && before.arc === piece.arc && before.toShare < 1 && before.toShare === piece.fromShare) {
      joined[joined.length - 1] = { ...before, toShare: piece.toShare }
    } else joined.push(piece)
  }
  return joined
}

/** Points of a stretch, both ends included. */
export function pointsOfPiece(graph: RoadGraph, { arc, fromShare, toShare }: RoutePiece): Point[] {
  const edge = arc >>> 1
  const points: Point[] = []
  for (let i = graph.shapeStart[edge] ?? 0; i < (graph.shapeStart[edge + 1] ?? 0); i++) {
    points.push({ lat: (graph.shapeLatE7[i] ?? 0) / DEGREES_E7, lon: (graph.shapeLonE7[i] ?? 0) / DEGREES_E7 })
  }
  if (arc & 1) points.reverse()
  return fromShare <= 0 && toShare >= 1 ? points : cut(points, fromShare, toShare)
}

function cut(points: readonly Point[], fromShare: number, toShare: number): Point[] {
  const along_m = alongM(points)
  const total_m = along_m.at(-1) ?? 0
  const inside = points.filter((_, i) => (along_m[i] ?? 0) > fromShare * total_m && (along_m[i] ?? 0) < toShare * total_m)
  return [pointAlong(points, fromShare, along_m), ...inside, pointAlong(points, toShare, along_m)]
}
