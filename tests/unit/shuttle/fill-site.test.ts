import { describe, expect, test } from 'vitest'
import { compileShuttle, recordShuttle } from '@/lib/shuttle'
import { dumpSite, fillSite, layout, tender } from './layout'

// Both tenders dump at once from 130 s and come to the fill site at 520 s; hooked up at 550 s.
const two = [tender(), tender({ id: 'T2' })]
const dumps = [dumpSite({ positionCount: 2 })]
const endsOf = (spec: Parameters<typeof layout>[0]) => {
  const { log } = recordShuttle(compileShuttle(layout({ dumps, tenders: two, ...spec })), { demand: 'open' })
  return two.map(({ id }) => log.find(({ kind, tenderId }) => kind === 'ends-fill' && tenderId === id)!.time_s)
}

describe('a fill site', () => {
  test('fills at the rate for the bays in use', () => {
    expect(endsOf({ fills: [fillSite({ bayCount: 2, bayRate_gpm: [1000, 600] })] }).map(Math.round)).toEqual([650, 650])
  })

  test('changes the rate when a bay starts or stops', () => {
    const late = [tender(), tender({ id: 'T2', arrive_s: 130 })]
    // T1 alone 30 s: 500 gal. Both at 500 gpm: T1 done after 60 s more; T2 has 500 gal then and takes 30 s alone.
    expect(endsOf({ tenders: late, fills: [fillSite({ bayCount: 2, bayRate_gpm: [1000, 500] })] })).toEqual([640, 670])
  })

  test('takes one after the other with one bay, first come, first served', () => {
    // T2 hooks up when T1 is out of the bay: 550 + 60 + 30, and 30 s later.
    expect(endsOf({})).toEqual([610, 730])
  })

  test('gives no more than the tender takes', () => {
    expect(endsOf({ tenders: [tender({ fillLimit_gpm: 400 }), two[1]!] })[0]).toBeCloseTo(550 + 150, 9)
  })

  test('tops up slowly: 800 gal at 1,000 gpm, 200 gal at 500 gpm', () => {
    expect(endsOf({ tenders: [tender({ topUpShare: 0.2, topUpRateShare: 0.5 }), two[1]!] })[0]).toBeCloseTo(550 + 48 + 24, 9)
  })

  test('goes on with the inflow when the source is empty', () => {
    // 500 gal and 100 gpm of inflow: empty after 500 / 900 min, the rest at 100 gpm.
    const [end_s] = endsOf({ fills: [fillSite({ usable_gal: 500, inflow_gpm: 100 })] })
    const until_min = 500 / 900
    expect(end_s).toBeCloseTo(550 + 60 * (until_min + (1000 - 1000 * until_min) / 100), 6)
  })

  test('takes nobody before it is ready', () => {
    expect(endsOf({ fills: [fillSite({ ready_s: 900 })] })[0]).toBe(900 + 30 + 60)
  })
})

describe('a tender', () => {
  test('leaves after the dump that ends at or after its time', () => {
    const { log, run } = recordShuttle(compileShuttle(layout({ tenders: [tender({ withdraw_s: 200 })] })))
    expect(log.filter(({ kind }) => kind === 'withdraws').map(({ time_s }) => time_s)).toEqual([130 + 840 + 60 + 30])
    expect(run.tenders[0]!.roundCount).toBe(2)
  })

  test('has a line without gaps from its arrival to the end', () => {
    const { segments, run } = recordShuttle(compileShuttle(layout({ tenders: two })))
    segments.forEach((list) => {
      expect(list[0]!.from_s).toBe(100)
      list.slice(1).forEach((segment, k) => expect(segment.from_s).toBe(list[k]!.to_s))
      expect(list[list.length - 1]!.to_s).toBe(run.end_s)
    })
    const waited_s = segments[1]!.filter(({ phase }) => phase === 'waits-to-dump').reduce((sum, { from_s, to_s }) => sum + to_s - from_s, 0)
    expect(waited_s).toBeCloseTo(run.tenders[1]!.waitedToDump_s, 9)
  })

  test('takes a multiple of the round when alone: use of places and tender', () => {
    const { run } = recordShuttle(compileShuttle(layout()), { demand: 'open', afterReady_s: 840 * 5 - 90 })
    // From 100 s to 4,300 s: five rounds of 840 s, 120 s in the position each.
    expect(run.end_s).toBe(4300)
    expect(run.dumps[0]!.positionBusyShare[0]).toBeCloseTo(600 / 4300, 9)
    expect(run.fills[0]!.bayBusyShare[0]).toBeCloseTo(600 / 4300, 9)
    expect(run.fills[0]!.pumperBusyShare).toBeCloseTo(300 / 4300, 9)
    expect(run.tenders[0]).toMatchObject({ roundCount: 5, busyShare: 1 })
  })
})
