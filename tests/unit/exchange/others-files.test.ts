import { describe, expect, it } from 'vitest'
import { GALLONS_PER_CUBIC_FOOT, METRES_PER_FOOT } from '@/lib/units'
import { guess, lines, read, readFixture, understood } from './support'

const LITRES_PER_GALLON = 3.785411784

describe('KML as map programs write it', () => {
  it('gives placemarks with their folder, their data typed or not, and the words of their description', async () => {
    const file = await readFixture('gis-folders.kml')
    expect(file.features.map(({ at, values, shape }) => [at, values.name, values.folder, shape?.kind])).toEqual([
      [1, 'Upper pond & weir', 'North / Ponds', 'point'],
      [2, 'Mill lake', 'North / Ponds', 'area'],
      [3, 'Two tanks', 'North', 'point'],
      [3, 'Two tanks', 'North', 'point'],
      [4, 'A note without a place', 'North', undefined],
      [5, 'Drive to the lake', undefined, 'line'],
    ])
    expect(file.features[0]?.values).toMatchObject({ TYPE: 'Farm pond', 'Capacity (L)': '378541.1784', description: 'Gate code at station\nSoft bank in spring' })
    expect(file.features[5]?.shape).toMatchObject({ duration_s: 210 })
    expect(file.notes.map(({ code, values }) => [code, values])).toEqual([['exchange-links-left', { linkCount: 1 }], ['exchange-pictures-left', { pictureCount: 1 }]])
  })

  it('becomes sources: litres of a typed column, a polygon by its surface, names of kinds as others have them', async () => {
    const found = understood(await readFixture('gis-folders.kml'), { list: 'sources' })
    expect(found.candidates.map(({ item }) => [item.name, item.kind])).toEqual([['Upper pond & weir', 'pond'], ['Mill lake', 'lake'], ['Two tanks', 'cistern'], ['Two tanks', 'cistern']])
    expect(found.candidates[0]?.item.usable_gal).toBeCloseTo(378_541.1784 / LITRES_PER_GALLON, 6)
    // 0.01° square at 44.05° N: (111,195 m)² × 0.01² × cos 44.05° on the sphere of 6,371,008.8 m; worked out by hand.
    expect(Number(found.candidates[1]?.item.surface_sqft) * METRES_PER_FOOT ** 2).toBeCloseTo(1111.95 ** 2 * Math.cos((44.05 * Math.PI) / 180), -3)
    expect(lines(found)).toEqual(['4 | exchange-no-place', '4 | exchange-kind-missing', '5 | exchange-kind-missing'])
  })
})

describe('GPX as receivers write it', () => {
  it('gives waypoints with their extensions, routes, and tracks with the time they took', async () => {
    const file = await readFixture('receiver.gpx')
    expect(file.features.map(({ values, shape }) => [values.name, shape?.kind])).toEqual([['DRAFT 01', 'point'], ['HYD 7', 'point'], ['To barn', 'line'], ['ACTIVE LOG', 'line']])
    expect(file.features[0]?.values).toMatchObject({ Depth: '2.4', desc: 'firm gravel, gate on left' })
    // 09:00:00Z to 11:05:00+02:00 is five minutes.
    expect(file.features[3]?.shape).toMatchObject({ duration_s: 300 })
  })

  it('becomes ways of a plan: a drawn route leads by its points, a driven track gives time and length', async () => {
    const file = await readFixture('receiver.gpx')
    const found = understood({ ...file, features: file.features.slice(2) }, { list: 'legNotes' })
    expect(found.candidates.map(({ item: { fromId, toId, via, travel_s } }) => ({ fromId, toId, via, travel_s }))).toEqual([
      { fromId: 'f1', toId: 'du1', via: [{ lat: 45.01, lon: -40.02 }], travel_s: undefined },
      { fromId: 'du1', toId: 'f1', via: undefined, travel_s: 300 },
    ])
    // On the plane: √((0.0099 × 111.195)² + (0.0201 × 78.61)²) + √((0.0099 × 111.195)² + (0.0299 × 78.61)²) km, by hand.
    expect(found.candidates[1]?.item.distance_mi).toBeCloseTo(4.521 / 1.609344, 2)
  })

  it('takes a depth in metres from an extension where a person says so', async () => {
    const found = understood(await readFixture('receiver.gpx'), { list: 'sources', kind: 'pond', columns: { name: { to: 'name' }, sym: { to: 'kind' }, Depth: { to: 'deepest_ft', unit: 'm' } } })
    expect(found.candidates).toEqual([expect.objectContaining({ item: expect.objectContaining({ name: 'HYD 7', kind: 'pressureHydrant' }) as unknown })])
    expect(lines(found)).toEqual(['1 | sym | exchange-not-a-choice | Flag, Blue', '3 | exchange-needs-point', '4 | exchange-needs-point'])
  })
})

describe('GeoJSON as map programs write it', () => {
  it('becomes sources; what is null, projected, a line or of no known kind is named', async () => {
    const file = await readFixture('gis-export.geojson')
    const columns = { ...guess(file, 'sources'), VOLUME_M3: { to: 'usable_gal', unit: 'm3' } }
    const found = understood(file, { list: 'sources', columns, kind: 'pond' })
    expect(found.candidates.map(({ at, item }) => [at, item.name, item.kind])).toEqual([[1, 'Quarry', 'pond'], [2, 'Tanks', 'cistern'], [2, 'Tanks', 'cistern']])
    expect(found.candidates[0]?.item).toMatchObject({ testedOn: '2024-06-30' })
    expect(found.candidates[0]?.item.usable_gal).toBeCloseTo((12.5 / METRES_PER_FOOT ** 3) * GALLONS_PER_CUBIC_FOOT, 6)
    expect(lines(found)).toEqual(['3 | exchange-no-place', '4 | TYPE | exchange-not-a-choice | swamp', '5 | exchange-projected | 4880210.7, 634500.2', '6 | exchange-needs-point'])
  })
})

describe('tables as spreadsheets write them', () => {
  it('reads semicolons, decimal commas, quoted line breaks, degrees and minutes, days with full stops', async () => {
    const file = await readFixture('office-semicolons.csv')
    expect(file.decimal).toBe(',')
    const found = understood(file, { list: 'sources', columns: {
      Name: { to: 'name' }, Art: { to: 'kind' }, Breite: { to: 'lat' }, Länge: { to: 'lon' }, 'Volumen (m³)': { to: 'usable_gal', unit: 'm3' },
      'Lift (m)': { to: 'deepest_ft', unit: 'm' }, Geprüft: { to: 'testedOn', unit: 'day/month/year' }, Bemerkung: { to: 'notes' },
    } })
    expect(found.candidates.map(({ at, item, point }) => [at, item.name, point.lat, point.lon])).toEqual([
      [2, 'Oberer Teich; West', 44.0512, -73.2041],
      [3, 'Löschteich', 44.0512, -73.2041],
    ])
    expect(found.candidates[0]?.item).toMatchObject({ testedOn: '2025-08-31', notes: 'Tor mit "Schloss"\r\nSchlüssel im Haus' })
    expect(found.candidates[0]?.item.usable_gal).toBeCloseTo(1234.5 * 1000 / LITRES_PER_GALLON, 6)
    expect(found.candidates[1]?.repeats).toBe(2)
    expect(lines(found)).toEqual(['5 | Volumen (m³) | exchange-not-a-number | viel', '6 | Art | exchange-not-a-choice | bridge'])
  })

  it('guesses columns, units and the order of days by names and cells, and names each bad row with its column', async () => {
    const file = await readFixture('county-records.csv')
    expect(guess(file, 'sources')).toEqual({
      'Site Name': { to: 'name' }, Type: { to: 'kind' }, Lat: { to: 'lat' }, Long: { to: 'lon' }, 'Capacity (gal)': { to: 'usable_gal', unit: 'gal' },
      'Static PSI': { to: 'static_psi', unit: 'psi' }, 'Test date': { to: 'testedOn', unit: 'month/day/year' }, Comments: { to: 'notes' },
    })
    const columns = { ...guess(file, 'sources') }
    const found = understood(file, { list: 'sources', columns })
    expect(found.candidates.map(({ at, item }) => [at, item.name])).toEqual([[2, 'Town hydrant 4'], [4, 'Old cistern']])
    expect(lines(found)).toEqual([
      '3 | Test date | exchange-not-a-day | 13/1/2025',
      '5 | Capacity (gal) | exchange-unit-unknown | 12k',
      '6 | Static PSI | exchange-out-of-range | 900',
    ])
  })

  it('reads what is not UTF-8 as Windows-1252, and says so', async () => {
    const bytes = Uint8Array.from([...'name,lat,lon\r\nM'].map((c) => c.charCodeAt(0)).concat([0xfc]).concat([...'hle,44,-73\r\n'].map((c) => c.charCodeAt(0))))
    const file = await read(bytes)
    if ('code' in file) throw new Error(file.code)
    expect(file.features[0]?.values.name).toBe('Mühle')
    expect(file.notes.map(({ code }) => code)).toEqual(['exchange-encoding-guessed'])
  })
})
