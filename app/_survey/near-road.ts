import type { Point } from '@/lib/geo'
import { findNearest, roadFlag, type RoadGraph } from '@/lib/roads'

/** What the data says of the road nearest to a point. */
export type NearRoad = {
  readonly name: string
  readonly ref: string
  readonly distance_ft: number
  readonly speed_mph?: number
  readonly maxWeight_lb?: number
  readonly maxHeight_ft?: number
  readonly maxWidth_ft?: number
  readonly isBridge: boolean
}

/** @returns undefined when there is no road at all */
export function findNearRoad(graph: RoadGraph, point: Point): NearRoad | undefined {
  const place = findNearest(graph, point)
  if (!place) return undefined
  const road = graph.edgeRoad[place.edge] ?? 0
  const known = (field: string, value: number | undefined) => (value === undefined || Number.isNaN(value) || value <= 0 ? {} : { [field]: value })
  return {
    name: graph.texts[graph.roadName[road] ?? 0] ?? '',
    ref: graph.texts[graph.roadRef[road] ?? 0] ?? '',
    distance_ft: place.distance_ft,
    isBridge: ((graph.roadFlags[road] ?? 0) & roadFlag.bridge) !== 0,
    ...known('speed_mph', graph.roadSpeedForward_mph[road]),
    ...known('maxWeight_lb', graph.roadMaxWeight_lb[road]),
    ...known('maxHeight_ft', graph.roadMaxHeight_ft[road]),
    ...known('maxWidth_ft', graph.roadMaxWidth_ft[road]),
  }
}
