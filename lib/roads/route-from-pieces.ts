import type { Point } from '../geo'
import { FEET_PER_MILE } from '../units'
import type { RoadPlace } from './find-nearest'
import { roadClasses } from './road-class'
import type { RoadGraph } from './road-graph'
import { START_STOP_S, type Route, type RouteStep } from './route'
import { cautionsOf } from './route-cautions'
import { limitsOf } from './route-limits'
import { pointsOfPiece, type RoutePiece } from './route-pieces'
import type { RoadWeights } from './weigh-graph'

export type RouteGaps = { readonly from: RoadPlace; readonly to: RoadPlace }

/** Adds up a route from its stretches: distance, time, shape, steps, limits kept, cautions. */
export function routeFromPieces(graph: RoadGraph, weights: RoadWeights, pieces: readonly RoutePiece[], { from, to }: RouteGaps): Route {
  let distance_ft = 0, drive_s = 0, wait_s = 0
  const path: Point[] = []
  const steps: RouteStep[] = []
  pieces.forEach((piece, i) => {
    const { arc, fromShare, toShare } = piece
    const share = toShare - fromShare
    const stretch_ft = share * (graph.edgeLength_ft[arc >>> 1] ?? 0)
    const stretch_s = share * (weights.drive_s[arc] ?? 0)
    const stop_s = i < pieces.length - 1 ? (graph.arcDelay_s[arc] ?? 0) : 0
    distance_ft += stretch_ft
    drive_s += stretch_s
    wait_s += stop_s
    for (const point of pointsOfPiece(graph, piece)) {
      const last = path[path.length - 1]
      if (!last || last.lat !== point.lat || last.lon !== point.lon) path.push(point)
    }
    addStep(steps, graph, arc, stretch_ft, stretch_s + stop_s)
  })
  const gaps = { fromGap_ft: from.distance_ft, toGap_ft: to.distance_ft }
  return {
    distance_mi: distance_ft / FEET_PER_MILE,
    travel_s: drive_s + wait_s + START_STOP_S,
    drive_s, wait_s, startStop_s: START_STOP_S,
    path, steps,
    limits: limitsOf(graph, weights, pieces),
    cautions: cautionsOf(graph, weights, pieces, gaps),
    ...gaps,
  }
}

function addStep(steps: RouteStep[], graph: RoadGraph, arc: number, stretch_ft: number, travel_s: number): void {
  const road = graph.edgeRoad[arc >>> 1] ?? 0
  const name = graph.texts[graph.roadName[road] ?? 0] ?? '', ref = graph.texts[graph.roadRef[road] ?? 0] ?? ''
  const roadClass = roadClasses[graph.roadClass[road] ?? 0] ?? 'road'
  const before = steps[steps.length - 1]
  const distance_mi = stretch_ft / FEET_PER_MILE
  // A road keeps its name over bridges and bends; an unnamed one is told apart by its class.
  if (before && before.name === name && before.ref === ref && (name !== '' || ref !== '' || before.roadClass === roadClass)) {
    steps[steps.length - 1] = { ...before, distance_mi: before.distance_mi + distance_mi, travel_s: before.travel_s + travel_s }
  } else steps.push({ name, ref, roadClass, distance_mi, travel_s })
}
