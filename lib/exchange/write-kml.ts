import xmlbuilder from 'xmlbuilder'
import type { XMLElement } from 'xmlbuilder'
import type { Point } from '../geo'
import { flatFields } from './flat-fields'
import { plainDecimal } from './plain-decimal'
import type { Place, PlaceList, Shape } from './place'
import type { WriteOptions } from './write-options'
import { xmlText } from './xml-text'

const tuple = ({ lat, lon }: Point): string => `${plainDecimal(lon)},${plainDecimal(lat)}`

/**
 * Places as KML 2.2 (OGC 07-147r2): a folder for each list, notes as the description, fields as untyped extended data.
 * Elements stand in the order in which the standard has them.
 */
export function writeKml(places: readonly Place[], { title, attribution, listName, fieldName }: WriteOptions): string {
  const root = xmlbuilder.create('kml', { encoding: 'UTF-8' }).att('xmlns', 'http://www.opengis.net/kml/2.2')
  const document = root.ele('Document')
  document.ele('name', xmlText(title))
  if (attribution !== undefined) document.ele('description', xmlText(attribution))
  const lists = new Map<PlaceList, Place[]>()
  for (const place of places) lists.set(place.list, [...(lists.get(place.list) ?? []), place])
  for (const [list, items] of lists) {
    const folder = document.ele('Folder')
    folder.ele('name', xmlText(listName(list)))
    for (const place of items) addPlacemark(folder, place, fieldName)
  }
  return root.end({ pretty: true, indent: ' ' })
}

function addPlacemark(folder: XMLElement, { list, id, name, shape, fields, plan }: Place, fieldName: WriteOptions['fieldName']): void {
  const { notes, ...rest } = fields
  const placemark = folder.ele('Placemark')
  placemark.ele('name', xmlText(name))
  if (typeof notes === 'string') placemark.ele('description', xmlText(notes))
  const data = placemark.ele('ExtendedData')
  const put = (field: string, value: string, label?: string): void => {
    const one = data.ele('Data', { name: xmlText(field) })
    if (label !== undefined) one.ele('displayName', xmlText(label))
    one.ele('value', xmlText(value))
  }
  put('list', list)
  put('id', id)
  if (plan !== undefined) put('plan', plan)
  for (const [field, value] of Object.entries(flatFields(rest))) put(field, String(value), fieldName(field))
  if (shape) addShape(placemark, shape)
}

function addShape(placemark: XMLElement, shape: Shape): void {
  switch (shape.kind) {
    case 'point': placemark.ele('Point').ele('coordinates', tuple(shape.point)); return
    case 'line': placemark.ele('LineString').ele('tessellate', '1').up().ele('coordinates', shape.points.map(tuple).join(' ')); return
    case 'area': {
      const polygon = placemark.ele('Polygon')
      shape.rings.forEach((ring, i) => polygon.ele(i === 0 ? 'outerBoundaryIs' : 'innerBoundaryIs').ele('LinearRing').ele('coordinates', ring.map(tuple).join(' ')))
    }
  }
}
