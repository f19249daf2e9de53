import type { Point } from '../geo'
import { isoSeconds } from './iso-seconds'
import type { Scalar, Shape } from './place'
import { plainText } from './plain-text'
import { FeatureList, type FoundFile, type Report } from './read-report'
import { childOf, childText, walkXml, type XmlElement } from './walk-xml'
import { exchangeFault } from './exchange-fault'

/** Plain elements of a point, a route or a track, as columns. */
const WORDS = ['name', 'cmt', 'desc', 'src', 'sym', 'type', 'ele', 'time', 'number'] as const

/**
 * Reads GPX 1.1 (and 1.0, which has the same points): waypoints, routes, and tracks with the time they took. Extensions
 * become columns by their own names.
 *
 * @throws ExchangeFault as `walkXml` does, and `exchange-point-damaged` with its line for a point without coordinates
 */
export async function readGpx(bytes: Uint8Array, report: Report): Promise<FoundFile> {
  const list = new FeatureList()
  let at = 0
  await walkXml(bytes, {
    root: 'gpx',
    records: new Set(['wpt', 'rte', 'trk', 'metadata']),
    onRecord(element) {
      if (element.name === 'metadata') return
      at++
      list.add(at, valuesOf(element), shapeOf(element))
    },
  }, report)
  return list.file('gpx')
}

function shapeOf(element: XmlElement): Shape {
  if (element.name === 'wpt') return { kind: 'point', point: pointOf(element) }
  const steps = element.name === 'rte'
    ? element.children.filter(({ name }) => name === 'rtept')
    : element.children.filter(({ name }) => name === 'trkseg').flatMap(({ children }) => children.filter(({ name }) => name === 'trkpt'))
  const times = steps.flatMap((step) => isoSeconds(childText(step, 'time') ?? '') ?? [])
  const duration_s = element.name === 'trk' ? (times.at(-1) ?? 0) - (times[0] ?? 0) : 0
  return { kind: 'line', points: steps.map(pointOf), ...(duration_s > 0 && { duration_s }) }
}

function pointOf({ attributes: { lat = '', lon = '' }, line }: XmlElement): Point {
  const point = { lat: lat.trim() === '' ? NaN : Number(lat), lon: lon.trim() === '' ? NaN : Number(lon) }
  if (!Number.isFinite(point.lat) || !Number.isFinite(point.lon)) throw exchangeFault('exchange-point-damaged', { line })
  return point
}

function valuesOf(element: XmlElement): Record<string, Scalar> {
  const values: Record<string, Scalar> = {}
  const put = (key: string, text: string): void => { values[key in values ? `${key} (extension)` : key] = text }
  const extensions = childOf(element, 'extensions')
  const isOwn = extensions?.children.some(({ name }) => name === 'place') ?? false
  for (const word of WORDS) {
    const text = childOf(element, word)?.text
    if (text !== undefined) put(word, isOwn ? text : plainText(text))
  }
  const gather = (part: XmlElement): void => {
    for (const child of part.children) {
      if (child.name === 'field' && child.attributes.name !== undefined) values[child.attributes.name] = child.text
      else if (child.children.length > 0) gather(child)
      else put(child.name, child.text.trim())
    }
  }
  if (extensions) gather(extensions)
  return values
}
