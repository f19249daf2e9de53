import { describe, expect, test } from 'vitest'
import { compileShuttle, runShuttle } from '@/lib/shuttle'
import { dumpSite, layout, tender } from './layout'

// T1 arrives at 100 s, dumps 1,000 gal from 130 to 190 s. Draft limit 200 gal, reserve two minutes of flow.
const readyAt = (change: Parameters<typeof layout>[0], flow_gpm: number) =>
  runShuttle(compileShuttle(layout({ demand: { stages: [{ from_s: 0, flow_gpm }], reserve_s: 120 }, ...change }))).supplyReady_s

const second = tender({ id: 'T2', arrive_s: 100 })

describe('supply is ready', () => {
  test('when a tender has finished dumping, though the reserve was there before', () => {
    expect(readyAt({}, 100)).toBeCloseTo(190, 9)
  })

  test('when the reserve is reached: 200 + 2 · 500 = 1,200 gal, 12 s into the second load', () => {
    expect(readyAt({ tenders: [tender(), second] }, 500)).toBeCloseTo(190 + 30 + 30 + 12, 9)
  })

  test('when the tanks are full, though no tender has finished', () => {
    expect(readyAt({ dumps: [dumpSite({ capacity_gal: 500 })] }, 500)).toBeCloseTo(130 + 30, 9)
  })

  test('when the tanks are full, though they cannot hold the reserve', () => {
    expect(readyAt({ dumps: [dumpSite({ capacity_gal: 1100 })], tenders: [tender(), second] }, 600)).toBeCloseTo(190 + 60 + 6, 9)
  })

  test('not before the pumper is set', () => {
    expect(readyAt({ dumps: [dumpSite({ pumpReady_s: 700 })] }, 100)).toBe(700)
  })

  test('for all sites when the last one that carries demand is', () => {
    const dumps = [dumpSite({ id: 'a', demandShare: 0.5 }), dumpSite({ id: 'b', demandShare: 0.5 }), dumpSite({ id: 'c', demandShare: 0 })]
    const run = runShuttle(compileShuttle(layout({ dumps, tenders: [tender(), tender({ id: 'T2', dumpIndex: 1, arrive_s: 400 })] })))
    expect(run.dumps.map(({ supplyReady_s }) => supplyReady_s)).toEqual([190, 490, undefined])
    expect(run.supplyReady_s).toBe(490)
  })

  test('never without a tender, which blocks', () => {
    const run = runShuttle(compileShuttle(layout({ tenders: [tender({ arrive_s: undefined })] })))
    expect(run.supplyReady_s).toBeUndefined()
    expect(run.issues.map(({ code, severity }) => [code, severity])).toEqual([['supply-never-ready', 'block']])
    expect(run.balance).toMatchObject({ initial_gal: 0, inTransit_gal: 0, error_gal: 0 })
  })
})

describe('the first engine', () => {
  test('feeds the demand from its arrival until its tank is empty; the gap lasts until supply is ready', () => {
    const run = runShuttle(compileShuttle(layout({
      demand: { stages: [{ from_s: 0, flow_gpm: 300 }], firstDue: { arrive_s: 40, tank_gal: 500 }, reserve_s: 120 },
    })), { afterReady_s: 60 })
    expect(run).toMatchObject({ firstWater_s: 40, engineEmpty_s: 140, supplyReady_s: 190, gap_s: 50, shortSinceArrival_s: 50, shortSinceReady_s: 0 })
    expect(run.issues.map(({ code }) => code)).toEqual(['water-gap'])
    expect(run.delivered_gal).toBeCloseTo(500 + 300, 9)
    expect(run.demanded_gal).toBeCloseTo((300 * 210) / 60, 9)
  })

  test('keeps what is left once supply is ready: no gap', () => {
    const run = runShuttle(compileShuttle(layout({
      demand: { stages: [{ from_s: 0, flow_gpm: 300 }], firstDue: { arrive_s: 40, tank_gal: 1000 }, reserve_s: 120 },
    })), { afterReady_s: 60 })
    expect(run.engineEmpty_s).toBeUndefined()
    expect(run.gap_s).toBeUndefined()
    // 150 s from the engine, 60 s from the tanks.
    expect(run.delivered_gal).toBeCloseTo(750 + 300, 9)
    expect(run.balance.stored_gal).toBeCloseTo(250 + 700, 9)
  })

  test('with an empty tank is a gap from its arrival', () => {
    const run = runShuttle(compileShuttle(layout({
      demand: { stages: [{ from_s: 0, flow_gpm: 300 }], firstDue: { arrive_s: 40, tank_gal: 0 }, reserve_s: 120 },
    })))
    expect(run).toMatchObject({ engineEmpty_s: 40, gap_s: 150 })
  })

  test('carries the share of a site that is not ready yet', () => {
    const dumps = [dumpSite({ id: 'a', demandShare: 0.5 }), dumpSite({ id: 'b', demandShare: 0.5, pumpReady_s: 430 })]
    const run = runShuttle(compileShuttle(layout({
      dumps, tenders: [tender(), tender({ id: 'T2', dumpIndex: 1 })],
      demand: { stages: [{ from_s: 0, flow_gpm: 100 }], firstDue: { arrive_s: 70, tank_gal: 500 }, reserve_s: 120 },
    })), { afterReady_s: 60 })
    // 100 gpm for 120 s, then 50 gpm for 240 s.
    expect(run.balance.stored_gal).toBeCloseTo(100 + (1000 - 250) + (1000 - 50), 9)
    expect(run.shortSinceArrival_s).toBe(0)
  })
})
