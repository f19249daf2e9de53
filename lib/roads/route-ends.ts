import type { RoadPlace } from './find-nearest'
import type { RoadGraph } from './road-graph'
import type { RoadWeights } from './weigh-graph'

/** A place on an arc, and the cost so far at it (start) or none (end). `share` runs along the arc, not the edge. */
export type ArcEnd = { readonly state: number; readonly arc: number; readonly share: number; readonly cost_s: number; readonly place: RoadPlace }

/** Arcs by which a vehicle that stands at any of these places may leave, or arrive. */
export function arcEndsOf(graph: RoadGraph, weights: RoadWeights, places: readonly RoadPlace[]): ArcEnd[] {
  const ends: ArcEnd[] = []
  for (const place of places) {
    for (const arc of [2 * place.edge, 2 * place.edge + 1]) {
      if (weights.drive_s[arc] === Infinity) continue
      ends.push({ state: arc, arc, share: arc & 1 ? 1 - place.share : place.share, cost_s: 0, place })
    }
  }
  return ends
}

/** Time from a place on an arc to its end, waiting included. */
export const restOfArc_s = (graph: RoadGraph, weights: RoadWeights, { arc, share }: ArcEnd): number =>
  (1 - share) * weights.drive_s[arc]! + graph.arcDelay_s[arc]!

/** Time from the beginning of an arc to a place on it. */
export const startOfArc_s = (weights: RoadWeights, { arc, share }: ArcEnd): number => share * weights.drive_s[arc]!
