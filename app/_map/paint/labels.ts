import { findBounds, type Point } from '@/lib/geo'
import { isRoadLayer, type MapFeature, type RoadLayer } from '@/lib/osm'
import { mercatorLine } from '../mercator'

export type MapLabel = {
  text: string
  kind: 'place' | 'water' | 'road' | 'height'
  /** Lower ones get their place first. */
  rank: number
  firstZoom: number
  /** On the Mercator square: one point, or the line a road's name follows. */
  line: Float64Array
}

type Standing = readonly [rank: number, firstZoom: number]

const places: Readonly<Record<string, Standing>> = {
  city: [0, 6], town: [1, 9], village: [2, 11], suburb: [3, 12], hamlet: [4, 12], isolated_dwelling: [6, 14], farm: [6, 14], locality: [7, 14],
}
const roads: Readonly<Record<RoadLayer, Standing>> = {
  majorRoad: [20, 13], mainRoad: [21, 13], minorRoad: [22, 14], localRoad: [23, 15], serviceRoad: [24, 17], track: [25, 16],
}

/** Names to write on the map, most important first. */
export function labelsFrom(features: readonly MapFeature[]): MapLabel[] {
  return features.flatMap((feature) => labelOf(feature) ?? []).sort((a, b) => a.rank - b.rank)
}

function labelOf({ layer, name, kind, runs }: MapFeature): MapLabel | undefined {
  const text = name.trim()
  const run = runs[0]
  if (!text || !run || run.length === 0) return undefined
  const at = (labelKind: MapLabel['kind'], [rank, firstZoom]: Standing, points: readonly Point[]): MapLabel => ({ text, kind: labelKind, rank, firstZoom, line: mercatorLine(points) })
  if (layer === 'place') return at('place', places[kind] ?? [8, 15], run)
  if (layer === 'water') {
    const middle = findMiddle(run)
    return middle && at('water', [10, 13], [middle])
  }
  if (layer === 'waterway') return at('water', [11, 13], run)
  return isRoadLayer(layer) ? at('road', roads[layer], run) : undefined
}

/** Middle of the box around an area. */
function findMiddle(ring: readonly Point[]): Point | undefined {
  const box = findBounds(ring)
  return box && { lat: (box.south + box.north) / 2, lon: (box.west + box.east) / 2 }
}
