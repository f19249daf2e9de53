import type { Feature, FeatureCollection, Geometry, Position } from 'geojson'
import type { Point } from '../geo'
import type { Place, Shape } from './place'
import type { WriteOptions } from './write-options'

const position = ({ lat, lon }: Point): Position => [lon, lat]

/**
 * Places as GeoJSON (RFC 7946): WGS 84 degrees, longitude first; fields as properties, parts within each other. What has
 * no place has a null geometry (section 3.2).
 */
export function writeGeojson(places: readonly Place[], { title, attribution }: Pick<WriteOptions, 'title' | 'attribution'>): string {
  const collection: FeatureCollection<Geometry | null> & Record<string, unknown> = {
    type: 'FeatureCollection',
    // Members beside those of the standard (section 6.1).
    name: title,
    ...(attribution !== undefined && { attribution }),
    features: places.map(featureFrom),
  }
  return JSON.stringify(collection, null, 1)
}

function featureFrom({ list, id, name, shape, fields, plan }: Place): Feature<Geometry | null> {
  return { type: 'Feature', id, geometry: shape ? geometryFrom(shape) : null, properties: { list, id, name, ...(plan !== undefined && { plan }), ...fields } }
}

function geometryFrom(shape: Shape): Geometry {
  switch (shape.kind) {
    case 'point': return { type: 'Point', coordinates: position(shape.point) }
    case 'line': return { type: 'LineString', coordinates: shape.points.map(position) }
    case 'area': return { type: 'Polygon', coordinates: shape.rings.map((ring) => ring.map(position)) }
  }
}
