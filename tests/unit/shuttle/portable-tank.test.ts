import { describe, expect, test } from 'vitest'
import { advance, begin, compileShuttle, levelAt, recordShuttle, runShuttle, withDemand } from '@/lib/shuttle'
import { dumpSite, layout, tender } from './layout'

const at = (spec: Parameters<typeof layout>[0], time_s: number) => {
  const scenario = compileShuttle(layout(spec))
  const state = begin(scenario)
  advance(scenario, state, time_s)
  return { scenario, state, level_gal: levelAt(state, 0) }
}

describe('a portable tank', () => {
  test('fills in a straight line while a tender dumps', () => {
    expect(at({}, 130).level_gal).toBe(0)
    expect(at({}, 160).level_gal).toBeCloseTo(500, 9)
    expect(at({}, 190).level_gal).toBeCloseTo(1000, 9)
  })

  test('when full takes water at the rate it is drawn, and dumpers give way in proportion to their rates', () => {
    const spec = {
      dumps: [dumpSite({ positionCount: 2, capacity_gal: 1000 })],
      tenders: [tender({ dumpRate_gpm: [900] }), tender({ id: 'T2', dumpRate_gpm: [300] })],
      demand: { stages: [{ from_s: 0, flow_gpm: 240 }], reserve_s: 60 },
    }
    // 1,200 gpm together fill 1,000 gal in 50 s; from there 240 gpm: 180 and 60.
    const { state, level_gal } = at(spec, 240)
    expect(level_gal).toBe(1000)
    expect([...state.rate_gpm]).toEqual([180, 60])
    expect(state.in_gpm[0]).toBe(240)
  })

  test('takes nothing when full and not drawn from', () => {
    const { state } = at({ dumps: [dumpSite({ capacity_gal: 500, pumpReady_s: 5000 })] }, 4000)
    expect(state.load_gal[0]).toBeCloseTo(500, 9)
    expect(state.next_s[0]).toBe(Infinity)
  })

  test('takes a falling dump rate part by part: 500 gal at 1,000 gpm, 500 gal at 500 gpm', () => {
    const { log } = recordShuttle(compileShuttle(layout({ tenders: [tender({ dumpRate_gpm: [1000, 500] })] })), { demand: 'open' })
    expect(log.find(({ kind }) => kind === 'ends-dump')?.time_s).toBeCloseTo(130 + 30 + 60, 9)
  })

  test('gets what is not spilled', () => {
    const run = runShuttle(compileShuttle(layout({ tenders: [tender({ spillShare: 0.1 })] })), { afterReady_s: 1 })
    expect(run.dumps[0]!.received_gal).toBeCloseTo(900, 9)
    expect(run.balance.spilled_gal).toBeCloseTo(100, 9)
  })
})

describe('a draft', () => {
  // 1,000 gal at 190 s, 300 gpm from there, limit 200 gal: lost after 800 / 300 min = 160 s.
  const spec = { dumps: [dumpSite({ booster_gal: 150, reprime_s: 60 })] }

  test('is lost when the level falls to the limit, and the booster tank runs half a minute', () => {
    const run = runShuttle(compileShuttle(layout(spec)), { afterReady_s: 400 })
    expect(run.dumps[0]).toMatchObject({ draftLossCount: 1 })
    expect(run.dumps[0]!.draftLost_s).toBeCloseTo(400 - 160, 9)
    expect(run.shortSinceReady_s).toBeCloseTo(400 - 160 - 30, 9)
    expect(run.dumps[0]!.pumped_gal).toBeCloseTo(800 + 150, 9)
    expect(run.issues.map(({ code }) => code)).toEqual(['flow-short', 'draft-lost'])
  })

  test('comes back 60 s after the water stands half a minute of flow above the limit', () => {
    const { log } = recordShuttle(compileShuttle(layout(spec)), { afterReady_s: 1200 })
    const times = log.filter(({ kind }) => ['draft-lost', 'reprime', 'draft-back'].includes(kind)).map(({ time_s }) => time_s)
    // The second load starts at 130 + 840 s; 150 gal at 1,000 gpm take 9 s.
    expect(times.slice(0, 3).map((time_s) => Math.round(time_s * 1e6) / 1e6)).toEqual([350, 979, 1039])
  })

  test('is never sought in tanks that hold no more than the limit', () => {
    const scenario = withDemand(compileShuttle(layout({ dumps: [dumpSite({ draftLimit: [{ flow_gpm: 0, volume_gal: 1000 }], capacity_gal: 1000 })] })), 300)
    const state = begin(scenario)
    advance(scenario, state, 250)
    // Ready with full tanks at 190 s, nobody dumping any more: lost at once, for good.
    expect(state.losses[0]).toBe(1)
    expect(state.reprimed_s[0]).toBe(Infinity)
  })

  test('is lost at a higher flow from a level that was enough for a lower one', () => {
    const dumps = [dumpSite({ draftLimit: [{ flow_gpm: 100, volume_gal: 100 }, { flow_gpm: 500, volume_gal: 900 }] })]
    const run = recordShuttle(compileShuttle(layout({ dumps, demand: { stages: [{ from_s: 0, flow_gpm: 100 }, { from_s: 300, flow_gpm: 500 }], reserve_s: 60 } })))
    expect(run.log.find(({ kind }) => kind === 'draft-lost')?.time_s).toBe(300)
  })
})
