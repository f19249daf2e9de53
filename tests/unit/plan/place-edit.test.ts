import { describe, expect, it } from 'vitest'
import { firstNeeds, missingNeeds, missingNext } from '@/app/_plan/first-needs'
import { JOIN_REACH_FT, placeEdit } from '@/app/_plan/place-edit'
import { EARTH_RADIUS_M, type Point } from '@/lib/geo'
import type { EditBody } from '@/lib/plan'
import { metresFromFeet } from '@/lib/units'
import { smallBundle } from '@/tests/fixtures/bundle'

const bank = { lat: 45.02, lon: -40.0 }
/** A point so far north, by the length of an arc of the meridian. */
const north = (point: Point, away_ft: number): Point => ({ ...point, lat: point.lat + (metresFromFeet(away_ft) / EARTH_RADIUS_M) * (180 / Math.PI) })
const docs = (changes: Readonly<Record<string, unknown>> = {}) => smallBundle(changes)
const put = (kind: Parameters<typeof placeEdit>[0], point: Point, onSiteId?: string) => placeEdit(kind, { point, onSiteId }, docs(), () => 'new')
const itemOf = (body: EditBody | undefined) => (body?.kind === 'addItem' ? body.item : undefined)

describe('placing a fill site', () => {
  it('joins a draft site within the stated reach, and none beyond it', () => {
    expect(itemOf(put('fillSite', north(bank, JOIN_REACH_FT - 2)).plan[0])).toMatchObject({ draftSiteId: 'ds1' })
    expect(itemOf(put('fillSite', north(bank, JOIN_REACH_FT + 2)).plan[0])).not.toHaveProperty('draftSiteId')
  })

  it('stands where the map was tapped, and at the draft site whose symbol was tapped', () => {
    const tap = north(bank, 40)
    expect(itemOf(put('fillSite', tap).plan[0])).toMatchObject({ point: tap })
    expect(itemOf(put('fillSite', tap, 'ds1').plan[0])).toMatchObject({ point: bank, draftSiteId: 'ds1' })
  })

  it('takes the source whose symbol was tapped', () => {
    const far = north(bank, 900)
    expect(itemOf(put('fillSite', far, 'so1').plan[0])).toMatchObject({ point: far, sourceId: 'so1' })
  })
})

describe('placing on a symbol', () => {
  it('puts a dump site there, whatever it stands for', () => {
    for (const id of ['so1', 'ds1', 'h1', 'st1', 'f1', 'du1', 'fireGround']) expect(itemOf(put('dumpSite', bank, id).plan[0])).toMatchObject({ point: bank })
  })

  it('of a hazard makes it the plan’s hazard when the fire ground is placed', () => {
    expect(put('fireGround', north({ lat: 45, lon: -40.05 }, 20), 'h1').plan).toEqual([{ kind: 'setFields', set: { hazardId: 'h1', fireGround: { lat: 45, lon: -40.05 } } }])
  })
})

describe('what a first answer needs', () => {
  it('is everything of an empty plan, and nothing of a whole one', () => {
    const empty = docs({ 'plan.fillSites': [], 'plan.dumpSites': [], 'plan.tenders': [], 'plan.hazardId': undefined, 'plan.legNotes': [] })
    expect(missingNeeds(empty.district, empty.plan)).toEqual([...firstNeeds])
    expect(missingNeeds(docs().district, docs().plan)).toEqual([])
  })

  it('is a pumper at the fill site only while no rate was measured there', () => {
    const bare = docs({ 'plan.fillSites.0.pumperId': undefined })
    expect(missingNeeds(bare.district, bare.plan)).toEqual(['pumper'])
    const rated = docs({ 'plan.fillSites.0.pumperId': undefined, 'plan.fillSites.0.rate_gpm': 700 })
    expect(missingNeeds(rated.district, rated.plan)).toEqual([])
  })
})

describe('what comes next', () => {
  it('is the first-due engine with its tank, and the flow the fire needs', () => {
    const next = (changes: Readonly<Record<string, unknown>>) => { const { district, plan } = docs(changes); return missingNext(district, plan) }
    expect(next({})).toEqual([])
    expect(next({ 'plan.firstDueId': undefined, 'plan.hazardId': undefined })).toEqual(['firstDue', 'need'])
    expect(next({ 'district.apparatus.1.tank_gal': undefined })).toEqual(['firstDue'])
    expect(next({ 'plan.hazardId': undefined, 'plan.demand': [{ id: 's1', from_s: 0, flow_gpm: 300 }] })).toEqual([])
  })
})
