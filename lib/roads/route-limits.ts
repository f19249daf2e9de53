import type { Point } from '../geo'
import { DEGREES_E7 } from '../osm'
import type { RoadGraph } from './road-graph'
import type { LimitCheck } from './route'
import type { RoutePiece } from './route-pieces'
import type { RoadWeights } from './weigh-graph'

/** Name of the road of an edge, else its number, else empty. */
export const nameOfEdge = (graph: RoadGraph, edge: number): string => {
  const road = graph.edgeRoad[edge] ?? 0
  return graph.texts[graph.roadName[road] ?? 0] || graph.texts[graph.roadRef[road] ?? 0] || ''
}

/** A point in the middle of an edge's drawn shape. */
export function middleOfEdge(graph: RoadGraph, edge: number): Point {
  const start = graph.shapeStart[edge] ?? 0, end = graph.shapeStart[edge + 1] ?? 0
  const after = Math.min(end - 1, (start + end) >>> 1), before = end - start > 2 ? after : start
  return {
    lat: ((graph.shapeLatE7[before] ?? 0) + (graph.shapeLatE7[after] ?? 0)) / 2 / DEGREES_E7,
    lon: ((graph.shapeLonE7[before] ?? 0) + (graph.shapeLonE7[after] ?? 0)) / 2 / DEGREES_E7,
  }
}

export type PostedLimits = { readonly weight_lb: number; readonly height_ft: number; readonly width_ft: number; readonly isNoted: boolean }

/** Limits posted on a stretch of road, notes before data; NaN where nothing is known. */
export function postedOnEdge(graph: RoadGraph, weights: RoadWeights, edge: number): PostedLimits {
  const road = graph.edgeRoad[edge] ?? 0
  const note = weights.noted.get(edge)
  return {
    weight_lb: note?.maxWeight_lb ?? graph.roadMaxWeight_lb[road] ?? NaN,
    height_ft: note?.maxHeight_ft ?? graph.roadMaxHeight_ft[road] ?? NaN,
    width_ft: note?.maxWidth_ft ?? graph.roadMaxWidth_ft[road] ?? NaN,
    isNoted: note !== undefined,
  }
}

/** Limits the route passes and the vehicle keeps, in the order they are met; one posting over several stretches counts once. */
export function limitsOf(graph: RoadGraph, weights: RoadWeights, pieces: readonly RoutePiece[]): LimitCheck[] {
  const checks: LimitCheck[] = []
  const { gross_lb, height_ft, width_ft } = weights.vehicle
  const seen = new Set<string>()
  for (const { arc } of pieces) {
    const edge = arc >>> 1
    const posted = postedOnEdge(graph, weights, edge)
    const rows = [['weight', posted.weight_lb, gross_lb], ['height', posted.height_ft, height_ft], ['width', posted.width_ft, width_ft]] as const
    for (const [kind, limit, vehicle] of rows) {
      const key = `${kind} ${graph.edgeRoad[edge]} ${limit}`
      if (Number.isNaN(limit) || seen.has(key)) continue
      seen.add(key)
      checks.push({ kind, limit, vehicle, name: nameOfEdge(graph, edge), point: middleOfEdge(graph, edge), isNoted: posted.isNoted })
    }
  }
  return checks
}
