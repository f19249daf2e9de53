import xmlbuilder from 'xmlbuilder'
import type { XMLElement } from 'xmlbuilder'
import type { Point } from '../geo'
import { flatFields } from './flat-fields'
import { plainDecimal } from './plain-decimal'
import type { Place } from './place'
import type { WriteOptions } from './write-options'
import { xmlText } from './xml-text'

/** Names our own elements; it names nothing that could be fetched. */
const OWN = 'urn:millrace:places:1'

/** GPX takes longitudes from -180 to below 180: the same meridian has its other name. */
const coordinates = ({ lat, lon }: Point): Record<string, string> => ({ lat: plainDecimal(lat), lon: plainDecimal(lon === 180 ? -180 : lon) })

/**
 * Places as GPX 1.1: points as waypoints, hose lays and notes on ways as routes, ways over the roads as tracks; the
 * fields as an extension of our own, which other readers pass over. What has no place, or is an area, is left out.
 */
export function writeGpx(places: readonly Place[], { title, attribution, listName }: WriteOptions): string {
  const root = xmlbuilder.create('gpx', { encoding: 'UTF-8' }).att({ version: '1.1', creator: 'Millrace', xmlns: 'http://www.topografix.com/GPX/1/1', 'xmlns:m': OWN })
  const metadata = root.ele('metadata')
  metadata.ele('name', xmlText(title))
  if (attribution !== undefined) metadata.ele('desc', xmlText(attribution))
  const lines = places.filter(({ shape }) => shape?.kind === 'line')
  for (const place of places) if (place.shape?.kind === 'point') describe(root.ele('wpt', coordinates(place.shape.point)), place, listName)
  for (const place of lines.filter(({ list }) => list !== 'ways')) {
    const route = describe(root.ele('rte'), place, listName)
    for (const point of pointsOf(place)) route.ele('rtept', coordinates(point))
  }
  for (const place of lines.filter(({ list }) => list === 'ways')) {
    const segment = describe(root.ele('trk'), place, listName).ele('trkseg')
    for (const point of pointsOf(place)) segment.ele('trkpt', coordinates(point))
  }
  return root.end({ pretty: true, indent: ' ' })
}

const pointsOf = ({ shape }: Place): readonly Point[] => (shape?.kind === 'line' ? shape.points : [])

/** Name, notes, kind and fields, in the order that the schema asks for. */
function describe(element: XMLElement, { list, id, name, fields, plan }: Place, listName: WriteOptions['listName']): XMLElement {
  const { notes, ...rest } = fields
  element.ele('name', xmlText(name))
  if (typeof notes === 'string') element.ele('desc', xmlText(notes))
  element.ele('type', xmlText(listName(list)))
  const own = element.ele('extensions').ele('m:place')
  const put = (field: string, value: string): void => { own.ele('m:field', { name: xmlText(field) }, xmlText(value)) }
  put('list', list)
  put('id', id)
  if (plan !== undefined) put('plan', plan)
  for (const [field, value] of Object.entries(flatFields(rest))) put(field, String(value))
  return element
}
