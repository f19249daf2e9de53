import proj4 from 'proj4'
import { issue, type Issue } from '@/lib/issue'

/** Geo keys of a GeoTIFF by name, as its reader gives them. */
export type GeoKeys = Readonly<Record<string, unknown>>

/** From a place to the file's own coordinates and back. */
export type RasterProjection = {
  /** True where the file's own coordinates are longitude and latitude. */
  readonly isDegrees: boolean
  toFile(lat: number, lon: number): readonly [number, number]
  fromFile(x: number, y: number): { readonly lat: number; readonly lon: number }
}

const PROJECTED = 1, GEOGRAPHIC = 2, USER_DEFINED = 32767
const DEGREE = 9102

/** Systems of degrees that lie within two metres of WGS 84: nothing to a sample of elevation. EPSG. */
const DEGREES = new Set([4326, 4269, 4258, 4283, 4167, 4617, 4759, 6318, 7844])
const WEB_MERCATOR = new Set([3857, 3785, 900913])

/** Metres in the units that horizontal and vertical keys may name. EPSG: metre, foot, US survey foot. */
export const metresInUnit: Readonly<Record<number, number>> = { 9001: 1, 9002: 0.3048, 9003: 1200 / 3937 }

/**
 * How the coordinates of a GeoTIFF lie on the earth.
 *
 * Degrees, UTM (WGS 84 and its kin north and south) and web mercator. A system that needs a shift of datum or a
 * definition of its own is refused by name.
 *
 * @source EPSG codes: 326xx, 327xx, 269xx, 6330–6348, 258xx, 3857; from memory
 */
export function findProjection(keys: GeoKeys): RasterProjection | Issue {
  const model = keys['GTModelTypeGeoKey']
  if (model === GEOGRAPHIC) {
    const code = Number(keys['GeographicTypeGeoKey'] ?? USER_DEFINED), angular = Number(keys['GeogAngularUnitsGeoKey'] ?? DEGREE)
    if (!DEGREES.has(code) || angular !== DEGREE) return unsupported(code, keys['GeogCitationGeoKey'] ?? keys['GTCitationGeoKey'])
    return { isDegrees: true, toFile: (lat, lon) => [lon, lat], fromFile: (x, y) => ({ lat: y, lon: x }) }
  }
  if (model !== PROJECTED) return issue('elevation-no-place', 'block')
  const code = Number(keys['ProjectedCSTypeGeoKey'] ?? USER_DEFINED)
  const definition = findDefinition(code), unit_m = metresInUnit[Number(keys['ProjLinearUnitsGeoKey'] ?? 9001)]
  if (definition === undefined || unit_m === undefined) return unsupported(code, keys['PCSCitationGeoKey'] ?? keys['GTCitationGeoKey'])
  const converter = proj4('EPSG:4326', definition)
  return {
    isDegrees: false,
    toFile: (lat, lon) => {
      const [x = NaN, y = NaN] = converter.forward([lon, lat])
      return [x / unit_m, y / unit_m]
    },
    fromFile: (x, y) => {
      const [lon = NaN, lat = NaN] = converter.inverse([x * unit_m, y * unit_m])
      return { lat, lon }
    },
  }
}

function findDefinition(code: number): string | undefined {
  if (WEB_MERCATOR.has(code)) return 'EPSG:3857'
  const utm = (first: number, last: number, firstZone: number, ellipsoid: string) =>
    code >= first && code <= last ? `+proj=utm +zone=${code - first + firstZone} ${ellipsoid} +units=m +no_defs` : undefined
  return utm(32601, 32660, 1, '+datum=WGS84') ?? utm(32701, 32760, 1, '+south +datum=WGS84') ??
    utm(26901, 26923, 1, '+ellps=GRS80 +towgs84=0,0,0') ?? utm(6330, 6348, 1, '+ellps=GRS80 +towgs84=0,0,0') ??
    utm(25828, 25838, 28, '+ellps=GRS80 +towgs84=0,0,0')
}

function unsupported(code: number, citation: unknown): Issue {
  const cited = typeof citation === 'string' ? citation.replaceAll('|', ' ').replaceAll('\0', '').trim() : ''
  return issue('elevation-projection', 'block', [], { projection: code === USER_DEFINED ? cited || 'user-defined' : `EPSG:${code}` })
}
