import { describe, expect, it } from 'vitest'
import { checkCriterion, compilePlan, evaluatePlan } from '@/lib/supply'
import { smallBundle } from '@/tests/fixtures/bundle'

const answer = (criterion: unknown, changes: Parameters<typeof smallBundle>[0] = {}) => checkCriterion(compilePlan(smallBundle({ ...changes, 'plan.criterion': criterion })))

describe('the officer’s own criterion', () => {
  const bundle = smallBundle()
  const { sustainable_gpm, supplyReady_s } = evaluatePlan(bundle, { quick: true })
  const flow_gpm = Math.floor(sustainable_gpm ?? NaN)

  it('is not there until somebody states it', () => {
    expect(checkCriterion(compilePlan(bundle))).toBeUndefined()
  })

  it('passes at the sustainable flow from supply ready on', () => {
    expect(answer({ flow_gpm, by_s: Math.ceil(supplyReady_s ?? NaN) + 60, for_s: 7200 })).toMatchObject({ verdict: 'pass', subjectIds: [] })
  })

  it('fails at the minute asked for when nobody is there yet', () => {
    const found = answer({ flow_gpm: 100, by_s: 60, for_s: 600 })
    expect(found).toMatchObject({ verdict: 'fail', fails_s: 60, why: 'engine-not-there' })
  })

  it('fails when the engine’s tank is empty before supply is ready', () => {
    // Engine 2 arrives, lays its line in 2 min and has 1,000 gal: at 500 gpm two minutes. Its set-up takes four, the shuttle's first load no less.
    const arrive_s = 120 + 60 * (0.65 + (60 / 35) * 3)
    const found = answer({ flow_gpm: 500, by_s: arrive_s + 120, for_s: 3600 }, { 'plan.dumpSites.0.pumpSetUp_s': 900 })
    expect(found).toMatchObject({ verdict: 'fail', why: 'engine-empty' })
    expect(found?.fails_s).toBeCloseTo(arrive_s + 120 + 120, 3)
  })

  it('fails at the pump where more is asked than it sends on', () => {
    expect(answer({ flow_gpm: 3000, by_s: Math.ceil(supplyReady_s ?? NaN), for_s: 600 })?.verdict).toBe('fail')
  })

  it('fails later for a smaller pond that runs dry', () => {
    const found = answer({ flow_gpm: 200, by_s: Math.ceil(supplyReady_s ?? NaN) + 60, for_s: 7200 }, {
      'district.sources.0': { id: 'so1', name: 'Mill pond', kind: 'pond', point: { lat: 45.02, lon: -40.0 }, usable_gal: 9000 },
    })
    expect(found).toMatchObject({ verdict: 'fail', why: 'source-empty', subjectIds: ['f1'] })
    expect(found?.fails_s).toBeGreaterThan((supplyReady_s ?? NaN) + 60)
  })

  it('fails a blocked plan at once', () => {
    expect(answer({ flow_gpm: 200, by_s: 600, for_s: 600 }, { 'plan.tenders': [] })).toMatchObject({ verdict: 'fail', fails_s: 600, why: 'blocked' })
  })

  it('holds for less whenever it holds for more', () => {
    const by_s = Math.ceil(supplyReady_s ?? NaN) + 60
    for (const gpm of [100, 200, 300, 400, 500]) {
      const long = answer({ flow_gpm: gpm, by_s, for_s: 7200 })
      const short = answer({ flow_gpm: gpm, by_s, for_s: 1800 })
      if (long?.verdict === 'pass') expect(short?.verdict).toBe('pass')
      else if (short?.verdict === 'fail') expect(short.fails_s).toBe(long?.fails_s)
    }
  })
})
