import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { deviceClocks, onOneClock } from '@/lib/field-log'
import type { SiteEvent } from '@/lib/plan'
import { nightOf, nightWorld } from './night'
import { event } from './site-events'

const clockOf = (events: readonly SiteEvent[], device: string, world: Parameters<typeof deviceClocks>[1] = nightWorld) =>
  deviceClocks(events, world).find((clock) => clock.device === device)!

/** How far the clock at the dump site is ahead of that at the fill site, as found: the difference of their shifts. */
const found_s = (events: readonly SiteEvent[], world?: Parameters<typeof deviceClocks>[1]) => clockOf(events, 'phone-F', world).shift_s - clockOf(events, 'phone-D', world).shift_s

const noPlan = { findTrip: () => undefined }

describe('a clock that is ahead is found from tenders going both ways', () => {
  // Two-way time transfer: with the same delay both ways the offset is half the difference (ITU-R TF.1153, from memory).
  test('exactly where every trip takes what was planned', () => {
    const events = nightOf({ seed: 1, tenderCount: 2, roundCount: 5, ahead_s: 187, jitterShare: 0, dropShare: 0 })
    expect(found_s(events)).toBeCloseTo(187, 2)
    const clock = deviceClocks(events, nightWorld).find(({ basis }) => basis !== 'reference')!
    expect(clock).toMatchObject({ basis: 'both-ways', matchCount: 18 })
  })

  test('also where all trips take a fifth longer than planned, up to half of what the two ways differ', () => {
    const events = nightOf({ seed: 2, tenderCount: 3, roundCount: 6, ahead_s: -95, jitterShare: 0.02, dropShare: 0, slowFactor: 1.2 })
    expect(Math.abs(found_s(events) + 95)).toBeLessThan(10)
  })

  test('within its own doubt in nineteen nights of twenty, and never twice that, with trips that differ and missed events', () => {
    let beyond = 0
    fc.assert(fc.property(
      fc.record({ seed: fc.integer({ min: 1, max: 1e6 }), tenderCount: fc.integer({ min: 2, max: 5 }), roundCount: fc.integer({ min: 4, max: 9 }), ahead_s: fc.integer({ min: -300, max: 300 }), dropShare: fc.double({ min: 0, max: 0.25, noNaN: true }) }),
      (night) => {
        const events = nightOf({ ...night, jitterShare: 0.15 })
        const doubt_s = Math.max(...deviceClocks(events, nightWorld).map((clock) => clock.doubt_s))
        const off_s = Math.abs(found_s(events) - night.ahead_s)
        if (off_s > doubt_s) beyond += 1
        expect(doubt_s).toBeLessThan(120)
        expect(off_s).toBeLessThanOrEqual(2 * doubt_s)
      },
    ), { numRuns: 200, seed: 7 })
    expect(beyond).toBeLessThanOrEqual(10)
  })

  test('where it is hours off, or else among the shifts of whole rounds that fit nearly as well', () => {
    let wrong = 0
    for (let seed = 1; seed <= 100; seed++) {
      const ahead_s = seed % 2 === 0 ? 3600 : -7250
      const events = nightOf({ seed, tenderCount: 3, roundCount: 7, ahead_s, jitterShare: 0.15, dropShare: 0.15 })
      const clocks = deviceClocks(events, nightWorld)
      const doubt_s = Math.max(...clocks.map((clock) => clock.doubt_s))
      if (Math.abs(found_s(events) - ahead_s) <= doubt_s + 5) continue
      wrong += 1
      const shifted = clocks.find(({ basis }) => basis !== 'reference')!
      const sign = shifted.device === 'phone-D' ? -1 : 1
      expect(shifted.rivals_s.some((rival_s) => Math.abs(rival_s - sign * ahead_s) < 150)).toBe(true)
    }
    expect(wrong).toBeLessThanOrEqual(10)
  })

  test('without any plan, from the time the tenders are away and stay', () => {
    const events = nightOf({ seed: 3, tenderCount: 3, roundCount: 6, ahead_s: 240, jitterShare: 0.1, dropShare: 0 })
    const doubt_s = Math.max(...deviceClocks(events, noPlan).map((clock) => clock.doubt_s))
    expect(Math.abs(found_s(events, noPlan) - 240)).toBeLessThanOrEqual(doubt_s)
    expect(doubt_s).toBeLessThan(90)
  })
})

test('trips in one direction alone give the offset with the whole doubt of a trip', () => {
  const oneWay = nightOf({ seed: 4, tenderCount: 1, roundCount: 7, ahead_s: 300, jitterShare: 0.05, dropShare: 0 })
    .filter(({ post, kind }) => (post.kind === 'fill' ? kind === 'left' : kind === 'arrived'))
  const clock = deviceClocks(oneWay, nightWorld).find(({ basis }) => basis !== 'reference')!
  expect(clock.basis).toBe('one-way')
  expect(clock.doubt_s).toBeGreaterThan(0.3 * 420)
  expect(Math.abs(found_s(oneWay) - 300)).toBeLessThan(60)
})

test('two phones that saw the same arrivals are tied by them, and one that only keeps the flow stands alone', () => {
  const same = [0, 600, 1300].flatMap((at_s, i) => [event(10 + i, at_s, { device: 'a' }), event(20 + i, at_s + 65 + i, { device: 'b' })])
  const events = [...same, event(30, 100, { device: 'c', kind: 'flow', value: 500, apparatusId: undefined, post: { kind: 'attack' } })]
  const clocks = deviceClocks(events, nightWorld)
  expect(clocks.find(({ basis }) => basis === 'same-event')).toMatchObject({ matchCount: 3 })
  expect(Math.abs(clocks.find(({ basis }) => basis === 'same-event')!.shift_s)).toBeCloseTo(66, 6)
  expect(clockOf(events, 'c')).toMatchObject({ basis: 'unlinked', shift_s: 0 })
})

test('of three clocks the one that is off is laid on the two that agree', () => {
  const at = (device: string, off_s: number, first: number) => [0, 500, 1100, 1900].map((at_s, i) => event(first + i, at_s + off_s, { device }))
  const clocks = deviceClocks([...at('a', 3600, 1), ...at('b', 1, 11), ...at('c', 0, 21)], nightWorld)
  expect(clocks.find(({ device }) => device === 'a')!.shift_s).toBeCloseTo(-3600, -1)
  for (const device of ['b', 'c']) expect(clocks.find((clock) => clock.device === device)!.shift_s).toBe(0)
})

test('clocks that agree within the doubt are left as they are', () => {
  const events = nightOf({ seed: 5, tenderCount: 2, roundCount: 5, ahead_s: 8, jitterShare: 0.1, dropShare: 0 })
  expect(deviceClocks(events, nightWorld).map(({ shift_s }) => shift_s)).toEqual([0, 0])
})

test('laid on one clock, the night is in its own order again', () => {
  const events = nightOf({ seed: 6, tenderCount: 1, roundCount: 4, ahead_s: 400, jitterShare: 0, dropShare: 0 })
  const order = onOneClock(events, deviceClocks(events, nightWorld)).map(({ post, kind }) => `${post.siteId} ${kind}`)
  expect(order.slice(0, 5)).toEqual(['D arrived', 'D left', 'F arrived', 'F left', 'D arrived'])
})
