import type { Point } from '../geo'
import type { DistrictMap, MapFeature, MapLayer } from './district-map'

type Position = [lon: number, lat: number]

/** The part of GeoJSON (RFC 7946) that a map is drawn from. */
export type DrawnGeometry =
  | { type: 'Point'; coordinates: Position }
  | { type: 'LineString'; coordinates: Position[] }
  | { type: 'MultiPolygon'; coordinates: Position[][][] }

export type DrawnFeature = {
  type: 'Feature'
  properties: { layer: MapLayer; name: string; kind: string; osmId: number; details: string }
  geometry: DrawnGeometry
}
export type DrawnCollection = { type: 'FeatureCollection'; features: DrawnFeature[] }

/**
 * Features of some layers for drawing, with [lon, lat] positions.
 *
 * @param layers which layers; all when left out
 */
export function geojsonFromDistrictMap({ features }: DistrictMap, layers?: readonly MapLayer[]): DrawnCollection {
  const wanted = layers ? features.filter(({ layer }) => layers.includes(layer)) : features
  return {
    type: 'FeatureCollection',
    features: wanted.map((feature): DrawnFeature => {
      const { layer, name, kind, osmId, details } = feature
      return { type: 'Feature', properties: { layer, name, kind, osmId, details }, geometry: geometryOf(feature) }
    }),
  }
}

const positions = (points: readonly Point[]): Position[] => points.map(({ lat, lon }): Position => [lon, lat])

function geometryOf({ shape, runs, isHole }: MapFeature): DrawnGeometry {
  const first = positions(runs[0] ?? [])
  if (shape === 'point') return { type: 'Point', coordinates: first[0] ?? [0, 0] }
  if (shape === 'line') return { type: 'LineString', coordinates: first }
  const polygons: Position[][][] = []
  runs.forEach((run, i) => {
    if (isHole[i]) polygons[polygons.length - 1]?.push(positions(run))
    else polygons.push([positions(run)])
  })
  return { type: 'MultiPolygon', coordinates: polygons }
}
