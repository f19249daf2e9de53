import { describe, expect, it } from 'vitest'
import { exchangeLimits } from '@/lib/exchange'
import { codeOf, read, readFixture } from './support'

const kml = (inside: string, head = ''): string => `<?xml version="1.0"?>${head}<kml xmlns="http://www.opengis.net/kml/2.2"><Document>${inside}</Document></kml>`
const collection = (...features: unknown[]): string => JSON.stringify({ type: 'FeatureCollection', features })

describe('a file that cannot be taken is refused with one reason', () => {
  it.each([
    ['nothing at all', '', 'exchange-unknown-format'],
    ['a picture', '\u0089PNG\r\n', 'exchange-unknown-format'],
    ['another kind of XML', '<?xml version="1.0"?><osm version="0.6"></osm>', 'exchange-wrong-root'],
    ['XML that ends early', kml('<Placemark><name>A').slice(0, 90), 'exchange-not-xml'],
    ['XML with a stray mark', kml('<Placemark><name>A & B</name></Placemark>'), 'exchange-not-xml'],
    ['entities declared', kml('', '<!DOCTYPE kml [<!ENTITY a "aaaa"><!ENTITY b "&a;&a;&a;&a;">]>'), 'exchange-entities'],
    ['an entity of a file', kml('', '<!DOCTYPE kml [<!ENTITY x SYSTEM "file:///etc/passwd">]>'), 'exchange-entities'],
    ['folders within folders without end', kml('<Folder>'.repeat(100) + '</Folder>'.repeat(100)), 'exchange-too-deep'],
    ['JSON that ends early', '{"type":"FeatureCollection","features":[', 'exchange-not-json'],
    ['JSON of another kind', '{"rows":[1,2]}', 'exchange-not-geojson'],
    ['coordinates of a grid', JSON.stringify({ type: 'FeatureCollection', crs: { type: 'name', properties: { name: 'urn:ogc:def:crs:EPSG::26918' } }, features: [] }), 'exchange-other-coordinates'],
    ['no features', collection(), 'exchange-empty'],
    ['a table of names alone', 'name,lat,lon\r\n', 'exchange-empty'],
    ['a waypoint without coordinates', '<?xml version="1.0"?><gpx version="1.1" creator="x" xmlns="http://www.topografix.com/GPX/1/1"><wpt lat="44"><name>A</name></wpt></gpx>', 'exchange-point-damaged'],
  ])('%s', async (_, text, code) => {
    expect(await codeOf(text === '\u0089PNG\r\n' ? Uint8Array.from([0x89, 0x50, 0x4e, 0x47, 13, 10]) : text)).toBe(code)
  })

  it('names the line of what is no XML', async () => {
    expect(await read(kml('\n\n<Placemark>\n</Folder>'))).toMatchObject({ code: 'exchange-not-xml', values: { line: 4 } })
  })

  it('of XML in an encoding it is not in', async () => {
    const bytes = Uint8Array.from([...'<?xml version="1.0" encoding="UTF-8"?><kml><Placemark><name>M'].map((c) => c.charCodeAt(0)).concat([0xfc, 0x3c]))
    expect(await codeOf(bytes)).toBe('exchange-encoding')
  })

  it('above the limits of features and of points', async () => {
    const point = { type: 'Feature', properties: {}, geometry: { type: 'Point', coordinates: [1, 2] } }
    expect(await codeOf(collection(...Array.from({ length: exchangeLimits.maxFeatures + 1 }, () => point)))).toBe('exchange-too-many')
    const line = { type: 'Feature', properties: {}, geometry: { type: 'LineString', coordinates: Array.from({ length: 1000 }, () => [1, 2]) } }
    expect(await codeOf(collection(...Array.from({ length: 501 }, () => line)))).toBe('exchange-too-many-points')
  })
})

describe('what is read all the same', () => {
  it('XML in another encoding that says so, in UTF-16 too', async () => {
    const latin = Uint8Array.from([...'<?xml version="1.0" encoding="ISO-8859-1"?><kml><Placemark><name>M\u00fchle</name></Placemark></kml>'].map((c) => c.charCodeAt(0)))
    expect(await read(latin)).toMatchObject({ features: [{ values: { name: 'Mühle' } }] })
    const text = '\ufeff<?xml version="1.0" encoding="UTF-16"?><kml><Placemark><name>M\u00fchle</name></Placemark></kml>'
    const wide = Uint8Array.from([...text].flatMap((c) => [c.charCodeAt(0) & 255, c.charCodeAt(0) >> 8]))
    expect(await read(wide)).toMatchObject({ features: [{ values: { name: 'Mühle' } }] })
  })

  it('a plain document type, prefixes on every element, a GPX of the version before', async () => {
    expect(await read('<?xml version="1.0"?><!DOCTYPE kml><k:kml xmlns:k="http://earth.google.com/kml/2.1"><k:Placemark><k:Point><k:coordinates>1,2</k:coordinates></k:Point></k:Placemark></k:kml>')).toMatchObject({ features: [{ shape: { kind: 'point', point: { lat: 2, lon: 1 } } }] })
    expect(await read('<gpx version="1.0" xmlns="http://www.topografix.com/GPX/1/0"><wpt lat="2" lon="1"/></gpx>')).toMatchObject({ features: [{ shape: { point: { lat: 2, lon: 1 } } }] })
  })

  it('a table whose first line names its separator', async () => {
    expect(await read('sep=;\r\nname;lat;lon\r\nA;44;-73\r\n')).toMatchObject({ columns: ['name', 'lat', 'lon'], features: [{ at: 2 }] })
  })

  it('fixtures, the same every time', async () => {
    for (const name of ['gis-folders.kml', 'receiver.gpx', 'gis-export.geojson', 'county-records.csv']) expect(await readFixture(name)).toEqual(await readFixture(name))
  })
})
