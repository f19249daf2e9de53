import GeoJSONVT from 'geojson-vt'
import type { Bounds } from '@/lib/geo'
import type { Issue } from '@/lib/issue'
import { decodeDistrictMap, geojsonFromDistrictMap, type DistrictMap } from '@/lib/osm'
import { labelsFrom, type MapLabel } from './paint/labels'

/** A district cut into tiles for drawing, and the names on it. */
export type DrawnDistrict = { tiles: GeoJSONVT; labels: readonly MapLabel[]; bounds: Bounds }

/** Finest zoom that tiles are cut for; beyond it the map cannot be zoomed. */
export const FINEST_ZOOM = 18
export const TILE_EXTENT = 4096

/** Cuts a district's features for drawing. Takes about a second for 50,000 features. */
function drawnDistrict(map: DistrictMap): DrawnDistrict {
  // The buffer holds half the widest road, so that strokes from the next tile are not cut off.
  const tiles = new GeoJSONVT(geojsonFromDistrictMap(map), { maxZoom: FINEST_ZOOM, extent: TILE_EXTENT, buffer: 192, tolerance: 3, indexMaxZoom: 4 })
  return { tiles, labels: labelsFrom(map.features), bounds: map.bounds }
}

const kept = new Map<string, DrawnDistrict>()

/**
 * The drawn district of a stored map, worked out once for each.
 *
 * @param hash  its name in the store
 * @param bytes its content
 * @returns the district, or the issue why the bytes are no map this code can read
 */
export function drawnDistrictFromBlob(hash: string, bytes: Uint8Array): DrawnDistrict | Issue {
  const known = kept.get(hash)
  if (known) return known
  const decoded = decodeDistrictMap(bytes)
  if ('code' in decoded) return decoded
  const made = drawnDistrict(decoded)
  kept.clear()
  kept.set(hash, made)
  return made
}
