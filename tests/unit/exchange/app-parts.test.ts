import { strToU8, zipSync } from 'fflate'
import { describe, expect, it } from 'vitest'
import { drivenWays } from '@/app/_exchange/driven-ways'
import { problemWords } from '@/app/_exchange/exchange-words'
import { unzipKml } from '@/app/_exchange/unzip-kml'
import { issue } from '@/lib/issue'
import { legUses, resolveLegs } from '@/lib/supply'
import { readPlaces } from '@/lib/exchange/read-places'
import { smallBundle } from '@/tests/fixtures/bundle'

const kml = (name: string): Uint8Array => strToU8(`<?xml version="1.0"?><kml><Placemark><name>${name}</name><Point><coordinates>1,2</coordinates></Point></Placemark></kml>`)

describe('packed KML', () => {
  it('gives the places of every file in it, the outermost first, and passes over pictures and files that only link', async () => {
    const linking = strToU8('<?xml version="1.0"?><kml><Document><NetworkLink><Link><href>layers/a.kml</href></Link></NetworkLink></Document></kml>')
    const file = await readPlaces(zipSync({ 'layers/a.kml': kml('inner'), 'layers/deep/b.kml': kml('innermost'), 'doc.kml': linking, 'outer.kml': kml('outer'), 'files/pin.png': strToU8('x') }), { unzipKml })
    expect(file).toMatchObject({ format: 'kml', features: [{ at: 1, values: { name: 'outer' } }, { at: 2, values: { name: 'inner' } }, { at: 3, values: { name: 'innermost' } }] })
  })

  it('without KML, damaged, or unpacking to too much is refused', async () => {
    expect(await readPlaces(zipSync({ 'a.txt': strToU8('x') }), { unzipKml })).toMatchObject({ code: 'exchange-zip-without' })
    expect(await readPlaces(zipSync({ 'doc.kml': kml('a') }).slice(0, 60), { unzipKml })).toMatchObject({ code: 'exchange-zip-damaged' })
    await expect(unzipKml(zipSync({ 'doc.kml': new Uint8Array(2000) }), 1000)).rejects.toThrow('1000')
  })
})

it('ways driven go out once for each load, with the path that was found', () => {
  const bundle = smallBundle({ 'plan.legNotes': [] })
  const path = [{ lat: 45, lon: -40 }, { lat: 45.01, lon: -40 }]
  const { legs } = resolveLegs(bundle, () => ({ distance_mi: 1, travel_s: 100, path }))
  const ways = drivenWays({ ...bundle, legs })
  expect(new Set(ways.map(({ fromId, toId, load }) => `${fromId} ${toId} ${load}`)).size).toBe(ways.length)
  expect(new Set(ways.map(({ fromId, toId }) => `${fromId} ${toId}`))).toEqual(new Set(legUses(bundle).map(({ fromId, toId }) => `${fromId} ${toId}`)))
  expect(ways.every((way) => way.path === path || way.path.length === 2)).toBe(true)
})

it('a problem is one sentence that says where', () => {
  const words = (column?: string, name = '') => problemWords({ at: 1234, name, ...(column !== undefined && { column }), issue: issue('exchange-not-a-number', 'block', [], { text: 'deep' }) }, true, 'us')
  expect(words('Depth', 'Mill pond')).toBe('Row 1,234 (Mill pond), column Depth: “deep” is not a number.')
  expect(words()).toBe('Row 1,234: “deep” is not a number.')
  expect(problemWords({ at: 2, name: '', issue: issue('exchange-out-of-range', 'block', [], { text: '90', low: -6.096, high: 60.96, unit: 'm' }) }, false, 'us')).toBe('Feature 2: “90” is out of range: from −6.1 to 60.96 m.')
})
