import { issue, type Issue } from '../issue'
import { exchangeFault } from './exchange-fault'
import { flatFields } from './flat-fields'
import { shapesFrom } from './geojson-shape'
import type { Scalar } from './place'
import { FeatureList, type FoundFile } from './read-report'

type Json = Readonly<Record<string, unknown>>

/** Names that older files give to what RFC 7946 takes for granted. */
const LONGITUDE_LATITUDE = /(CRS84|EPSG:{1,2}(?:\d*:)?4326|WGS ?84)$/i

/**
 * Reads GeoJSON (RFC 7946): a collection, one feature, or a bare geometry. Null geometries, foreign members, bounding
 * boxes and heights are passed over; a feature of several points or lines becomes as many features.
 *
 * @throws ExchangeFault when the text is no JSON, no GeoJSON, or in other coordinates than degrees
 */
export function readGeojson(text: string): FoundFile {
  let root: Json
  try {
    root = JSON.parse(text) as Json
  } catch (error) {
    throw exchangeFault('exchange-not-json', { reason: String((error as Error).message).slice(0, 120) })
  }
  if (typeof root !== 'object' || root === null) throw exchangeFault('exchange-not-geojson', { found: typeof root })
  const system = crsName(root)
  if (system !== undefined && !LONGITUDE_LATITUDE.test(system)) throw exchangeFault('exchange-other-coordinates', { system: system.slice(0, 60) })
  const list = new FeatureList()
  const notes: Issue[] = []
  featuresOf(root).forEach((feature, index) => {
    const at = index + 1
    const found = shapesFrom(feature.type === 'Feature' ? feature.geometry : feature)
    if ('wrong' in found) {
      notes.push(issue('exchange-unread-shape', 'warn', [], { at, found: found.wrong.slice(0, 40) }))
      return
    }
    const values = valuesOf(feature)
    if (found.shapes.length === 0) list.add(at, values)
    for (const shape of found.shapes) list.add(at, values, shape)
  })
  return list.file('geojson', notes)
}

function featuresOf(root: Json): Json[] {
  const isObject = (one: unknown): one is Json => typeof one === 'object' && one !== null
  if (root.type === 'FeatureCollection' && Array.isArray(root.features)) return root.features.filter(isObject)
  if (typeof root.type !== 'string' || (root.type !== 'Feature' && !('coordinates' in root) && !('geometries' in root))) throw exchangeFault('exchange-not-geojson', { found: String(root.type ?? 'JSON').slice(0, 40) })
  return [root]
}

function crsName({ crs }: Json): string | undefined {
  const name = (crs as { properties?: { name?: unknown } } | undefined)?.properties?.name
  return typeof name === 'string' ? name : undefined
}

/** Properties as columns. What lies deeper than one part is kept as JSON. */
function valuesOf({ type, properties, id }: Json): Record<string, Scalar> {
  const own = type === 'Feature' && typeof properties === 'object' && properties !== null ? flatFields(properties as Json) : {}
  return { ...((typeof id === 'string' || typeof id === 'number') && !('id' in own) && { id }), ...own }
}
