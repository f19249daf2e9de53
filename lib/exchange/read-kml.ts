import { issue, type Issue } from '../issue'
import type { Point } from '../geo'
import { isoSeconds } from './iso-seconds'
import type { Scalar, Shape } from './place'
import { plainText } from './plain-text'
import { FeatureList, type FoundFile, type Report } from './read-report'
import { childOf, childText, walkXml, type XmlElement } from './walk-xml'

const CONTAINERS = new Set(['Folder', 'Document'])
const PICTURES = new Set(['GroundOverlay', 'ScreenOverlay', 'PhotoOverlay', 'Tour'])

/**
 * Reads KML 2.2 (OGC 07-147r2): placemarks with points, lines, polygons and tracks, their extended data, and the folder
 * they lie in. Links to other files are not followed, pictures and styles are passed over.
 *
 * @throws ExchangeFault as `walkXml` does
 */
export async function readKml(bytes: Uint8Array, report: Report): Promise<FoundFile> {
  const list = new FeatureList()
  const folderNames = new Map<number, string>()
  const notes: Issue[] = []
  let at = 0, linkCount = 0, pictureCount = 0
  await walkXml(bytes, {
    root: 'kml',
    records: new Set(['Placemark', 'NetworkLink', 'name', ...PICTURES]),
    onRecord(element, around) {
      const holder = around.at(-1)
      if (element.name === 'name') {
        if (holder && CONTAINERS.has(holder.name)) folderNames.set(holder.count, element.text.trim())
      } else if (element.name === 'NetworkLink') linkCount++
      else if (PICTURES.has(element.name)) pictureCount++
      else {
        at++
        const folder = around.filter(({ name }) => name === 'Folder').map(({ count }) => folderNames.get(count) ?? '').filter(Boolean).join(' / ')
        const values = valuesOf(element, folder)
        const shapes = shapesOf(element)
        if (shapes === undefined) notes.push(issue('exchange-unread-shape', 'warn', [], { at, found: 'coordinates' }))
        else if (shapes.length === 0) list.add(at, values)
        else for (const shape of shapes) list.add(at, values, shape)
      }
    },
  }, report)
  if (linkCount > 0) notes.push(issue('exchange-links-left', 'warn', [], { linkCount }))
  if (pictureCount > 0) notes.push(issue('exchange-pictures-left', 'note', [], { pictureCount }))
  return list.file('kml', notes)
}

function valuesOf(placemark: XmlElement, folder: string): Record<string, Scalar> {
  const values: Record<string, Scalar> = {}
  const name = childText(placemark, 'name')
  const description = childOf(placemark, 'description')?.text
  if (name) values.name = name
  if (folder !== '') values.folder = folder
  const data = childOf(placemark, 'ExtendedData')
  const put = (key: string | undefined, text: string | undefined): void => {
    if (key && text !== undefined) values[key in values ? `${key} (data)` : key] = text
  }
  for (const one of data?.children ?? []) {
    if (one.name === 'Data') put(one.attributes.name, childOf(one, 'value')?.text)
    for (const simple of one.children) if (simple.name === 'SimpleData' || simple.name === 'SimpleArrayData') put(simple.attributes.name, simple.text)
  }
  // Our own keeps every character; others write a small page there.
  if (description !== undefined) values.description = 'list' in values ? description : plainText(description)
  return values
}

/** Shapes of a placemark, those of a collection apart; undefined where one cannot be read. */
function shapesOf(element: XmlElement): Shape[] | undefined {
  const shapes: Shape[] = []
  for (const child of element.children) {
    const found = shapeOf(child)
    if (found === undefined) return undefined
    shapes.push(...found)
  }
  return shapes
}

function shapeOf(element: XmlElement): Shape[] | undefined {
  switch (element.name) {
    case 'Point': {
      const [point] = tuples(childText(element, 'coordinates')) ?? []
      return point && [{ kind: 'point', point }]
    }
    case 'LineString': case 'LinearRing': {
      const points = tuples(childText(element, 'coordinates'))
      return points && [{ kind: 'line', points }]
    }
    case 'Polygon': {
      const rings = element.children.filter(({ name }) => name === 'outerBoundaryIs' || name === 'innerBoundaryIs')
        .sort((a, b) => Number(b.name === 'outerBoundaryIs') - Number(a.name === 'outerBoundaryIs'))
        .map((boundary) => tuples(childText(childOf(boundary, 'LinearRing') ?? boundary, 'coordinates')))
      return rings.length > 0 && rings.every((ring) => ring !== undefined) ? [{ kind: 'area', rings }] : undefined
    }
    case 'MultiGeometry': case 'MultiTrack': return shapesOf(element)
    case 'Track': {
      const points = element.children.filter(({ name }) => name === 'coord').map(({ text }) => tuples(text.trim().split(/\s+/).slice(0, 2).join(','))?.[0])
      if (points.length === 0 || !points.every((point) => point !== undefined)) return undefined
      const times = element.children.filter(({ name }) => name === 'when').flatMap(({ text }) => isoSeconds(text) ?? [])
      const duration_s = (times.at(-1) ?? 0) - (times[0] ?? 0)
      return [{ kind: 'line', points, ...(duration_s > 0 && { duration_s }) }]
    }
    default: return []
  }
}

/** `lon,lat[,height]` by spaces; undefined where one is not. */
function tuples(text: string | undefined): Point[] | undefined {
  const points = (text ?? '').trim().split(/\s+/).map((tuple) => {
    const [lon = '', lat = ''] = tuple.split(',')
    const point = { lat: lat === '' ? NaN : Number(lat), lon: lon === '' ? NaN : Number(lon) }
    return Number.isFinite(point.lat) && Number.isFinite(point.lon) ? point : undefined
  })
  return points.every((point) => point !== undefined) ? points : undefined
}
