import { describe, expect, it } from 'vitest'
import { defaultTaking, takeIn, type FoundFile, type PlaceList } from '@/lib/exchange'
import { allPlaces, applied, thereAndBack, writtenAs } from '@/tests/fixtures/exchange-there-and-back'
import { emptyTarget } from '@/tests/fixtures/arbitrary-places'
import { smallBundle } from '@/tests/fixtures/bundle'
import { read, target, understood } from './support'

const table = async (text: string): Promise<FoundFile> => {
  const file = await read(text)
  if ('code' in file) throw new Error(file.code)
  return file
}

describe('what is there already', () => {
  it('is found by name nearby, by the very spot, or by the id of our own file; a repeat within the file too', async () => {
    const file = await table('name,lat,lon\nmill-POND,45.0203,-40.0\nAnother name,45.02,-40.00001\nMill pond,45.2,-40.0\nNew,45.1,-40.1\nnew,45.1,-40.1\n')
    const { candidates } = understood(file, { list: 'sources', kind: 'pond' })
    expect(candidates.map(({ at, match, repeats }) => [at, match?.by, repeats])).toEqual([[2, 'placeAndName', undefined], [3, 'place', undefined], [4, undefined, undefined], [5, undefined, undefined], [6, undefined, 5]])
    expect(candidates.map(defaultTaking)).toEqual(['skip', 'skip', 'add', 'add', 'skip'])
  })

  it('is changed only in what the file says, and its kind never', async () => {
    const file = await table('name,kind,lat,lon,usable_gal\nMill pond,lake,45.02,-40,50000\n')
    const into = target()
    const { candidates } = understood(file, { list: 'sources' })
    expect(candidates[0]?.changes).toEqual(['usable_gal'])
    const taken = takeIn(candidates.map((candidate) => ({ candidate, taking: 'update' as const })), into, () => 'x')
    expect(applied(into.district, taken.district).sources).toEqual([{ ...into.district.sources[0], usable_gal: 50_000 }])
    expect([taken.addedCount, taken.updatedCount]).toEqual([0, 1])
  })

  it('far from the district is not taken unasked; latitude and longitude exchanged are noticed', async () => {
    const file = await table('name,lat,lon\nSwapped,-40.02,45.01\nFar,10,10\n')
    const { candidates } = understood(file, { list: 'hazards' })
    expect(candidates.map((candidate) => [candidate.looksSwapped ?? false, candidate.far_mi !== undefined, defaultTaking(candidate)])).toEqual([[true, true, 'skip'], [false, true, 'skip']])
    expect(understood(file, { list: 'hazards', isSwapped: true }).candidates[0]?.far_mi).toBeUndefined()
  })
})

describe('our own file', () => {
  it.each(['kml', 'csv-metric'] as const)('brought back unchanged from %s changes nothing', async (format) => {
    const { district, plan } = smallBundle({ 'district.sources.0.surface_sqft': 204_063.123456789 })
    const file = await table(writtenAs(format, allPlaces(district, plan)))
    const { candidates, problems } = understood(file, { list: 'sources' }, { district, plan })
    expect(problems).toEqual([])
    expect(candidates.map(({ list, match, changes }) => [list, match?.by, changes])).toEqual(['stations', 'sources', 'draftSites', 'hazards', 'fillSites', 'dumpSites', 'legNotes', 'legNotes', 'legNotes', 'legNotes'].sort((a, b) => order.indexOf(a as PlaceList) - order.indexOf(b as PlaceList)).map((list) => [list, 'id', []]))
    expect(new Set(candidates.map(defaultTaking))).toEqual(new Set(['skip']))
  })

  it('is known again after a map program has made a table of it: other names for coordinates, parts as JSON, slashes in days', async () => {
    const file = await table('X;Y;list;id;name;kind;testedOn;suction;pumperId;draftSiteId\n-40;45.02;sources;so1;Mill pond;pond;2025/06/14;;;\n-40;45.02;fillSites;f1;Mill pond fill;;;"{ ""size_in"": 6, ""length_ft"": 20 }";p1;ds1\n')
    const { candidates, problems } = understood(file, { list: 'sources' })
    expect(problems).toEqual([])
    expect(candidates.map(({ match, changes, item }) => [match?.by, changes, item.suction ?? item.testedOn])).toEqual([['id', ['testedOn'], '2025-06-14'], ['id', ['suction'], { size_in: 6, length_ft: 20 }]])
  })

  it('taken where its ids are in use gets others, and what refers to them follows', async () => {
    const { district, plan } = smallBundle()
    const into = target()
    const file = await table(writtenAs('geojson', allPlaces(district, plan)))
    const { candidates } = understood(file, { list: 'sources' }, into)
    let count = 0
    const taken = takeIn(candidates.map((candidate) => ({ candidate, taking: 'add' as const })), into, () => `n${++count}`)
    const after = applied(into.district, taken.district)
    expect(after.sources).toHaveLength(2)
    expect(after.draftSites[1]?.sourceId).toBe(after.sources[1]?.id)
    expect(after.sources[1]?.id).not.toBe('so1')
  })

  it('of several plans gives those of the plan it goes to; what refers to nothing there is left out and said', async () => {
    const { district, plan } = smallBundle()
    const { problems, places } = await thereAndBack('geojson', [...allPlaces(district, plan), ...allPlaces(district, { ...plan, name: 'A plan' })], emptyTarget())
    expect(new Set(problems.map(({ issue }) => issue.code))).toEqual(new Set(['exchange-other-plan', 'exchange-link-left']))
    expect(places.filter(({ list }) => list === 'fillSites')).toHaveLength(1)
  })
})

const order: readonly PlaceList[] = ['sources', 'draftSites', 'hazards', 'roadNotes', 'stations', 'fillSites', 'dumpSites', 'hoseLays', 'legNotes']
