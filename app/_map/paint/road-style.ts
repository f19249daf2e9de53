import type { RoadLayer } from '@/lib/osm'

export type RoadStyle = { width_px: number; casing_px: number; dash?: readonly number[] }

/** Widths at zoom 12 and at zoom 17; between them they grow evenly in ratio. */
const widths: Readonly<Record<RoadLayer, readonly [number, number]>> = {
  majorRoad: [3.6, 16], mainRoad: [3, 14], minorRoad: [2.2, 11], localRoad: [1.3, 9], serviceRoad: [0.6, 5], track: [0.8, 2.4],
}

/** From which zoom on a road is drawn at all. */
const firstZoom: Readonly<Record<RoadLayer, number>> = { majorRoad: 0, mainRoad: 0, minorRoad: 9, localRoad: 11, serviceRoad: 13, track: 12 }

/** How a road is drawn at a zoom, or undefined where it is not. */
export function findRoadStyle(layer: RoadLayer, zoom: number): RoadStyle | undefined {
  if (zoom < firstZoom[layer]) return undefined
  const [near, far] = widths[layer]
  const width_px = near * (far / near) ** ((Math.min(Math.max(zoom, 8), 19) - 12) / 5)
  if (layer === 'track') return { width_px, casing_px: 0, dash: [4 * width_px, 2 * width_px] }
  return { width_px, casing_px: zoom >= 11 ? width_px + 1.6 : 0 }
}
