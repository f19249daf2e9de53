import { describe, expect, test } from 'vitest'
import { advance, balanceOf, begin, carry, compileShuttle, PHASE, type ShuttleSpec } from '@/lib/shuttle'
import { dumpSite, fillSite, layout, tender } from './layout'

/** T1 dumps from 130 s, leaves at 220 s, reaches the fill site at 520 s, has filled at 610 s. */
const base = layout({ demand: { stages: [{ from_s: 0, flow_gpm: 100 }], reserve_s: 120 } })

function carriedAt(time_s: number, change: Partial<ShuttleSpec>) {
  const from = compileShuttle(base)
  const state = begin(from)
  advance(from, state, time_s)
  const to = compileShuttle({ ...base, ...change })
  return { to, next: carry(from, state, to) }
}

describe('after a decision', () => {
  test('a tender added comes now at the earliest, with its water', () => {
    const { to, next } = carriedAt(300, { tenders: [tender({ id: 'T0', arrive_s: 200 }), tender()] })
    expect(next.next_s[0]).toBe(300)
    expect(balanceOf(to, next).initial_gal).toBe(2000)
    expect(next.phase[1]).toBe(PHASE.drivesToFill)
    expect(next.next_s[1]).toBe(520)
  })

  test('a tender on its way finishes its leg and follows the new assignment after it', () => {
    const fills = [fillSite(), fillSite({ id: 'other' })]
    const { to, next } = carriedAt(300, { fills, tenders: [tender({ fillIndex: 1 })] })
    advance(to, next, 620)
    expect(next.drawn_gal[0]).toBeGreaterThan(0)
    advance(to, next, 2000)
    expect(next.drawn_gal[1]).toBeGreaterThan(0)
  })

  test('a tender at a site that is given up sets off for its new one', () => {
    const { to, next } = carriedAt(570, { fills: [fillSite({ id: 'other' })] })
    expect(next.phase[0]).toBe(PHASE.drivesToFill)
    expect(next.next_s[0]).toBe(570 + 300)
    // 20 s of filling at 1,000 gpm are aboard; what was drawn there has left the sums with the site.
    expect(next.load_gal[0]).toBeCloseTo(1000 / 3, 9)
    expect(balanceOf(to, next).error_gal).toBeCloseTo(0, 9)
  })

  test('a quicker pump fills what is left at once more quickly', () => {
    const { next } = carriedAt(580, { fills: [fillSite({ bayRate_gpm: [2000] })], tenders: [tender({ fillLimit_gpm: 2000 })] })
    expect(next.next_s[0]).toBeCloseTo(580 + 15, 9)
  })

  test('a smaller tank spills what it does not hold', () => {
    const { to, next } = carriedAt(191, { dumps: [dumpSite({ capacity_gal: 600 })] })
    const { spilled_gal, error_gal } = balanceOf(to, next)
    expect(spilled_gal).toBeCloseTo(1000 - 100 / 60 - 600, 9)
    expect(error_gal).toBeCloseTo(0, 9)
  })

  test('another flow is asked for from now on', () => {
    const { to, next } = carriedAt(250, { demand: { stages: [{ from_s: 0, flow_gpm: 400 }], reserve_s: 120 } })
    advance(to, next, 280)
    // 100 gpm from 190 to 250 s, 400 gpm for 30 s.
    expect(balanceOf(to, next).delivered_gal).toBeCloseTo(100 + 200, 9)
  })

  test('who stood in a position that is no more goes back to the head of the line', () => {
    const from = compileShuttle({ ...base, dumps: [dumpSite({ positionCount: 2 })], tenders: [tender(), tender({ id: 'T2' }), tender({ id: 'T3', arrive_s: 90 })] })
    const state = begin(from)
    advance(from, state, 160)
    expect(from.spec.tenders.map((_, i) => state.phase[i])).toEqual([PHASE.dumps, PHASE.waitsToDump, PHASE.dumps])
    const to = compileShuttle({ ...from.spec, dumps: [dumpSite({ positionCount: 1 })] })
    const next = carry(from, state, to)
    const phases = to.spec.tenders.map((_, i) => next.phase[i])
    expect(phases).toEqual([PHASE.waitsToDump, PHASE.waitsToDump, PHASE.dumps])
    advance(to, next, 1000)
    expect(next.given_gal[0]).toBeCloseTo(1000, 9)
    expect(balanceOf(to, next).error_gal).toBeCloseTo(0, 9)
  })
})
