import { describe, expect, it } from 'vitest'
import { evaluatePlan, explain, explainedFigures, resultSchema, type SupplyResult } from '@/lib/supply'
import { smallBundle } from '@/tests/fixtures/bundle'

const codes = ({ issues }: SupplyResult) => issues.map(({ code }) => code)

describe('the answer to a small plan', () => {
  const bundle = smallBundle()
  const result = evaluatePlan(bundle)

  it('is what its schema says', () => {
    expect(resultSchema.parse(result)).toEqual(result)
  })

  it('follows from numbers a person can add up', () => {
    // Way: 0.65 + 60/35 · 2 mi = 4.0786 min, 244.71 s each way. Dump 1,800 gal at 1,000 gpm: 108 s.
    // Fill at 1,000 gpm, the last tenth at half the rate: 108 · 1.1 = 118.8 s. Positions and clearing: 75 + 30 + 60 + 30.
    const round_s = 2 * 60 * (0.65 + (60 / 35) * 2) + 108 + 118.8 + 195
    const [tender] = result.tenders
    expect(tender?.cycle_s).toBeCloseTo(round_s, 4)
    expect(tender?.hand_gpm).toBeCloseTo(1800 / (round_s / 60), 4)
    // One bay and one position, nobody in the way: the haul is both tenders' loads over their round.
    expect(result.hauledCapacity_gpm).toBeCloseTo((2 * 1800) / (round_s / 60), 4)
    expect(result.hand_gpm).toBeCloseTo((2 * 1800) / (round_s / 60), 4)
    // Turnout 120 s, 3 mi: both the tender and Engine 2; tank set 120 s later, drafting 240 s after arrival.
    const arrive_s = 120 + 60 * (0.65 + (60 / 35) * 3)
    expect(result.firstArrival_s).toBeCloseTo(arrive_s, 9)
    expect(result.sites.find(({ kind }) => kind === 'dumpSite')).toMatchObject({ ready_s: arrive_s + 120, pumpReady_s: arrive_s + 240 })
  })

  it('keeps every gallon', () => {
    const balance = result.waterBalance_gal
    expect(Math.abs(balance?.error_gal ?? 1)).toBeLessThan(1e-6 * (balance?.drawn_gal ?? 0))
  })

  it('never promises more than is hauled', () => {
    expect(result.sustainable_gpm).toBeLessThanOrEqual(result.hauledCapacity_gpm ?? 0)
    expect(result.stored_gpm).toBeGreaterThanOrEqual(result.sustainable_gpm ?? Infinity)
  })

  it('ranks what limits it by what a tenth better would bring', () => {
    expect(result.limitingLink).toEqual(result.links[0])
    expect(result.limitingLink?.kind).toBe('road')
    const gains = result.links.map(({ gain_gpm }) => gain_gpm)
    expect(gains).toEqual(gains.toSorted((a, b) => b - a))
  })

  it('explains each figure by a working that ends in the same value', () => {
    for (const figure of explainedFigures) expect(explain(bundle, figure)?.value ?? null, figure).toBe(result[figure])
    for (const site of result.sites) {
      if (site.kind === 'dumpSite') expect(explain(bundle, `site/${site.id}/pump_gpm`)?.value).toBe(site.pump_gpm)
      else {
        expect(explain(bundle, `site/${site.id}/draft_gpm`)?.value).toBe(site.draft_gpm)
        expect(explain(bundle, `site/${site.id}/bayRate_gpm`)?.value).toBe(site.bayRate_gpm[0])
      }
    }
    for (const tender of result.tenders) for (const field of ['cycle_s', 'hand_gpm', 'arrive_s'] as const) expect(explain(bundle, `tender/${tender.id}/${field}`)?.value, field).toBeCloseTo(tender[field] ?? NaN, 9)
    for (const leg of result.legs) expect(explain(bundle, `leg/${leg.apparatusId}/${leg.fromId}/${leg.toId}`)?.value).toBe(leg.travel_s)
    expect(() => explain(bundle, 'nonsense')).toThrow(RangeError)
  })

  it('leaves the limiting link, and the order it gives to what to look at, out of the quick answer and nothing else', () => {
    const quick = evaluatePlan(bundle, { quick: true })
    expect({ ...quick, issues: [] }).toEqual({ ...result, links: [], limitingLink: null, issues: [] })
    expect(new Set(quick.issues)).toEqual(new Set(result.issues))
  })
})

describe('bad news', () => {
  it.each<[string, Record<string, unknown>, string]>([
    ['a lift no pump can reach', { 'district.draftSites.0.lift_ft': 33 }, 'lift-impossible'],
    ['no fill site', { 'plan.fillSites': [] }, 'plan-without-fill-site'],
    ['a tender with no tank', { 'district.apparatus.2.tank_gal': undefined }, 'tender-without-tank'],
    ['a way that the roads do not have', { legs: [{ key: '45.000000,-40.000000>>45.020000,-40.000000>>>>>', by: 'none', code: 'route-blocked', values: {} }], 'plan.legNotes': [] }, 'route-blocked'],
  ])('of %s blocks the answer, with null figures and the reason', (_, changes, code) => {
    const result = evaluatePlan(smallBundle(changes))
    expect(codes(result)).toContain(code)
    expect(resultSchema.parse(result)).toMatchObject({ sustainable_gpm: null, hauledCapacity_gpm: null, hand_gpm: null, limitingLink: null, waterBalance_gal: null })
  })

  it('says how many feet too high a lift is', () => {
    const problem = evaluatePlan(smallBundle({ 'district.draftSites.0.lift_ft': 33 })).issues.find(({ code }) => code === 'lift-impossible')
    expect(problem?.values.over_ft).toBeCloseTo(33 - 25.3, 1)
  })

  it('of straight lines is said with the factor', () => {
    expect(evaluatePlan(smallBundle({ 'plan.legNotes': [] })).issues).toContainEqual(expect.objectContaining({ code: 'leg-straight', values: { count: 5, factor: 1.4 } }))
  })
})

describe('rules of the answer', () => {
  it('a measured time comes before the roads and the handbook', () => {
    const result = evaluatePlan(smallBundle({ 'plan.legNotes.0.travel_s': 200 }))
    expect(result.legs.filter(({ fromId, toId }) => fromId === 'du1' && toId === 'f1')).toMatchObject([{ by: 'measured', travel_s: 200 }, { by: 'measured', travel_s: 200 }])
  })

  it('a leg found under another key is not used', () => {
    const leg = { key: 'stale', by: 'routed', distance_mi: 1, travel_s: 1, path: [] }
    expect(evaluatePlan(smallBundle({ legs: [leg], 'plan.legNotes': [] })).legs.every(({ by }) => by === 'handbook')).toBe(true)
  })

  it('a tank smaller than the time it takes to get supply leaves a gap, and the gap is said', () => {
    const result = evaluatePlan(smallBundle({ 'district.apparatus.1.tank_gal': 300 }))
    expect(result.gap_s).toBeGreaterThan(0)
    expect((result.supplyReady_s ?? 0) - (result.tankEmpty_s ?? 0)).toBeCloseTo(result.gap_s ?? -1, 6)
    expect(codes(result)).toContain('water-gap')
  })
})
