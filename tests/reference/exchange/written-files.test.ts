import { readFileSync } from 'node:fs'
import path from 'node:path'
import { check } from '@placemarkio/check-geojson'
import * as togeojson from '@tmcw/togeojson'
import { DOMParser } from '@xmldom/xmldom'
import fc from 'fast-check'
import type { FeatureCollection } from 'geojson'
import { XmlDocument, XsdValidator } from 'libxml2-wasm'
import { describe, expect, it } from 'vitest'
import type { Place } from '@/lib/exchange'
import { fullTarget } from '@/tests/fixtures/arbitrary-places'
import { allPlaces, writtenAs } from '@/tests/fixtures/exchange-there-and-back'

/**
 * What is written, by what others make of it: libxml2 with the schemas' rules (schemas from memory), a checker of
 * RFC 7946, and a general reader of KML and GPX. Sources: RFC 7946; OGC 07-147r2; GPX 1.1 schema; the libraries named.
 */

const placed = fullTarget.map(({ district, plan }) => allPlaces(district, plan).filter(({ shape }) => shape)).filter((places) => places.length > 0)

function schemaErrors(name: string, text: string): string[] {
  const schema = XmlDocument.fromString(readFileSync(path.join(import.meta.dirname, name), 'utf8'))
  const validator = XsdValidator.fromDoc(schema)
  const document = XmlDocument.fromString(text)
  try {
    validator.validate(document)
    return []
  } catch (error) {
    return [String((error as Error).message)]
  } finally {
    document.dispose(); validator.dispose(); schema.dispose()
  }
}

const pointsOf = ({ shape }: Place): [number, number][] => (shape?.kind === 'point' ? [shape.point] : shape?.kind === 'line' ? shape.points : []).map(({ lat, lon }) => [lon, lat])
const byName = (collection: FeatureCollection): string[] => collection.features.map(({ properties, geometry }) => `${String(properties?.name)} ${JSON.stringify('coordinates' in geometry ? (geometry.type === 'Point' ? [geometry.coordinates] : geometry.coordinates) : [])}`).sort()

describe('GeoJSON', () => {
  it('passes a checker of RFC 7946', () => {
    fc.assert(fc.property(placed, (places) => { expect(check(writtenAs('geojson', places)).type).toBe('FeatureCollection') }), { numRuns: 40 })
  })
})

describe.each(['kml', 'gpx'] as const)('%s', (format) => {
  const schema = format === 'kml' ? 'kml-2.2.xsd' : 'gpx-1.1.xsd'

  it('holds to the rules of its schema, by libxml2', () => {
    fc.assert(fc.property(placed, (places) => { expect(schemaErrors(schema, writtenAs(format, places))).toEqual([]) }), { numRuns: 40 })
  })

  it('is found wrong by the same rules where it is wrong', () => {
    const good = writtenAs(format, [{ list: 'stations', id: 's', name: 'S', shape: { kind: 'point', point: { lat: 1, lon: 2 } }, fields: {} }])
    expect(schemaErrors(schema, good)).toEqual([])
    const bad = format === 'kml' ? good.replace('2,1', '2 1') : good.replace('lat="1"', 'lat="91"')
    expect(schemaErrors(schema, bad)).not.toEqual([])
  })

  it('is read by a general reader as the same names and places', () => {
    const plain = placed.map((places) => places.map((place, i) => ({ ...place, name: `Place ${i}` })))
    fc.assert(fc.property(plain, (places) => {
      const document = new DOMParser().parseFromString(writtenAs(format, places), 'text/xml') as unknown as Document
      const seen = format === 'kml' ? togeojson.kml(document) : togeojson.gpx(document)
      const meant = places.map((place) => `${place.name} ${JSON.stringify(pointsOf(place).map(([lon, lat]) => [format === 'gpx' && lon === 180 ? -180 : lon, lat]))}`).sort()
      expect(byName(seen as FeatureCollection)).toEqual(meant)
    }), { numRuns: 40 })
  })
})
