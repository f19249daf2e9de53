import type { FeatureCollection } from 'geojson'
import GeoJSONVT from 'geojson-vt'
import type { Bounds, Point } from '@/lib/geo'
import type { ContourLine } from '@/app/_worker/ground/contour-lines'
import type { GroundDrawing } from '@/app/_worker/ground/ground-service'
import { FINEST_ZOOM, TILE_EXTENT } from './drawn-district'
import { mercatorLine } from './mercator'
import type { MapLabel } from './paint/labels'

/** The ground under a district: its shade, and lines of equal height with what they are called. */
export type DrawnGround = { image: ImageBitmap; bounds: Bounds; lines: GeoJSONVT; labels: readonly MapLabel[] }

/** Corners of a line that a height is written along, and from one writing to the next. */
const WRITTEN_ALONG = 10
const BETWEEN = 60

/** Makes ready for drawing what the worker found. */
export async function drawnGround({ shade, lines }: GroundDrawing, wordsFor: (value: number) => string): Promise<DrawnGround> {
  const image = await createImageBitmap(new ImageData(shade.pixels, shade.width, shade.height))
  const features: FeatureCollection = {
    type: 'FeatureCollection',
    features: lines.map(({ places }) => ({ type: 'Feature', properties: {}, geometry: { type: 'LineString', coordinates: places.map((place) => [...place]) } })),
  }
  const tiles = new GeoJSONVT(features, { maxZoom: FINEST_ZOOM, extent: TILE_EXTENT, buffer: 64, tolerance: 3, indexMaxZoom: 4 })
  return { image, bounds: shade.bounds, lines: tiles, labels: lines.flatMap((line) => heightLabels(line, wordsFor(line.value))) }
}

/** Where along a line its height is written: on its straightest pieces, a good way apart. */
function heightLabels({ places }: Pick<ContourLine, 'places'>, text: string): MapLabel[] {
  const points = places.map(([lon, lat]): Point => ({ lat, lon }))
  const labels: MapLabel[] = []
  for (let start = 0; start + WRITTEN_ALONG < points.length; start += BETWEEN) {
    let best = start, straightest = -1
    for (let at = start; at < start + BETWEEN && at + WRITTEN_ALONG < points.length; at++) {
      const share = straightness(points, at, at + WRITTEN_ALONG)
      if (share > straightest) [best, straightest] = [at, share]
    }
    const ends = [points[best], points[best + WRITTEN_ALONG]].filter((point) => point !== undefined)
    labels.push({ text, kind: 'height', rank: 40, firstZoom: 12, line: mercatorLine(ends) })
  }
  return labels
}

/** Share of the way along a line that its ends lie apart. */
function straightness(points: readonly Point[], from: number, to: number): number {
  const apart = (a: Point | undefined, b: Point | undefined) => (a && b ? Math.hypot(b.lat - a.lat, (b.lon - a.lon) * Math.cos((a.lat * Math.PI) / 180)) : 0)
  let along = 0
  for (let i = from; i < to; i++) along += apart(points[i], points[i + 1])
  return along > 0 ? apart(points[from], points[to]) / along : 0
}
