import { isDeepStrictEqual } from 'node:util'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { lossesOf, writtenFormats, type Place, type WrittenFormat } from '@/lib/exchange'
import { afterLosses } from '@/lib/exchange/losses'
import { emptyTarget, fullTarget } from '@/tests/fixtures/arbitrary-places'
import { allPlaces, thereAndBack } from '@/tests/fixtures/exchange-there-and-back'

const whatIsLeft = (places: readonly Place[], format: WrittenFormat): Place[] => places.flatMap((place) => afterLosses(place, format) ?? [])

/** Figures that went through metric units are the same to eleven digits; all else is the same. */
function nearly(value: unknown): unknown {
  if (typeof value === 'number') return Math.abs(value) < 1e-6 ? 0 : Number(value.toPrecision(8))
  if (Array.isArray(value)) return value.map(nearly)
  return typeof value === 'object' && value !== null ? Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, nearly(inner)])) : value
}

/** Notes on ways have no name of their own: the file names them after their ends. */
const nameless = (place: Place): Place => (place.list === 'legNotes' ? { ...place, name: '' } : place)

describe.each(writtenFormats)('%s', (format) => {
  it('brings back every place of a district and a plan, less what the table of losses says', async () => {
    await fc.assert(
      fc.asyncProperty(fullTarget, async ({ district, plan }) => {
        const places = allPlaces(district, plan)
        const left = whatIsLeft(places, format)
        fc.pre(left.length > 0)
        const back = await thereAndBack(format, places, emptyTarget())
        const compare = format === 'csv-metric' ? nearly : (value: unknown) => value
        expect(compare(back.places.map(nameless))).toEqual(compare(left.map(nameless)))
      }),
      { numRuns: 40 },
    )
  }, 60_000)
})

const station = (fields: Partial<Place> = {}): Place => ({ list: 'stations', id: 's1', name: 'Station', shape: { kind: 'point', point: { lat: 44.5, lon: -73.25 } }, fields: {}, ...fields })

/** One place for each loss, which shows it. */
const shown: Readonly<Record<string, Place>> = {
  'control-characters': station({ fields: { notes: 'a\u0001b' } }),
  'empty-text': station({ fields: { notes: '' } }),
  'far-meridian': station({ shape: { kind: 'point', point: { lat: 44.5, lon: 180 } } }),
  'no-place': { list: 'legNotes', id: 'l1', name: 'ref1 to ref2', fields: { fromId: 'ref1', toId: 'ref2', travel_s: 60 }, plan: 'A plan' },
  'metric-digits': { list: 'sources', id: 'so1', name: 'Pond', shape: { kind: 'point', point: { lat: 1, lon: 2 } }, fields: { kind: 'pond', surfaceElevation_ft: 1234.5678901234567 } },
}

describe('the table of losses', () => {
  it.each(writtenFormats)('of %s says no more than is really lost, and no less', async (format) => {
    const lost: string[] = []
    for (const [code, place] of Object.entries(shown)) {
      const back = await thereAndBack(format, [place, station({ id: 'other', name: 'Other' })], emptyTarget())
      const found = back.places.find(({ id }) => id === place.id)
      if (!isDeepStrictEqual(found, place)) lost.push(code)
    }
    expect(lost.sort()).toEqual(lossesOf(format).map(({ code }) => code as string).sort())
  })
})
