import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { advance, balanceOf, begin, carry, compileShuttle, fork, lowerSource, runShuttle, withDemand, type FeedSpec, type ShuttleSpec, type SimState } from '@/lib/shuttle'
import { anySpec } from './spec-arbitrary'

const END_S = 9000
const amount = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const water = fc.record({ sourceId: fc.constantFrom('pond', 'stream', undefined), usable_gal: amount(0, 60000), inflow_gpm: amount(0, 400) })
const lay = fc.record({ end: fc.constantFrom('dump', 'fill', 'fire'), at: fc.nat(7), ready_s: amount(0, 4000), flow_gpm: amount(20, 900), water: fc.option(water, { nil: undefined }) })

/** Any layout with hose lays; fill sites and lays that name one source share its water. */
const anyWithLays: fc.Arbitrary<ShuttleSpec> = fc.tuple(anySpec, fc.array(lay, { minLength: 1, maxLength: 3 }), fc.array(fc.option(water, { nil: undefined }), { minLength: 3, maxLength: 3 }))
  .map(([spec, lays, waters]) => ({
    ...spec,
    fills: spec.fills.map((fill, f) => ({ ...fill, ...waters[f] })),
    feeds: lays.map(({ end, at, water: own, ...rest }, j): FeedSpec => ({
      id: `lay-${j}`, ...rest, ...own,
      ...(end === 'dump' && { dumpIndex: at % spec.dumps.length }), ...(end === 'fill' && { fillIndex: at % spec.fills.length }),
    })),
  }))

const areSame = (a: SimState, b: SimState): boolean => Buffer.from(a.buffer).equals(Buffer.from(b.buffer))

describe('with hose lays and shared water', () => {
  test('none appears and none vanishes, and no source gives more than it held and what ran in', () => {
    let sharedCount = 0
    fc.assert(fc.property(anyWithLays, fc.constantFrom<'planned' | 'open' | number>('planned', 'open', 150, 700), (spec, demand) => {
      const run = runShuttle(compileShuttle(spec), { demand })
      expect(Math.abs(run.balance.error_gal)).toBeLessThan(1e-6 * Math.max(1, run.balance.initial_gal + run.balance.drawn_gal))
      for (const id of ['pond', 'stream']) {
        const users = [...spec.fills, ...spec.feeds!].filter(({ sourceId, usable_gal }) => sourceId === id && usable_gal !== undefined)
        if (users.length < 2) continue
        sharedCount++
        const least = (of: (one: (typeof users)[number]) => number) => Math.min(...users.map(of))
        const drawn_gal = run.fills.reduce((sum, one, f) => sum + (users.includes(spec.fills[f]!) ? one.drawn_gal : 0), 0)
          + run.feeds!.reduce((sum, one, j) => sum + (users.includes(spec.feeds![j]!) ? one.fed_gal : 0), 0)
        expect(drawn_gal).toBeLessThan(least(({ usable_gal }) => usable_gal!) + (least(({ inflow_gpm }) => inflow_gpm ?? 0) * run.end_s) / 60 + 1e-4)
      }
    }), { numRuns: 1000, seed: 21 })
    expect(sharedCount).toBeGreaterThan(250)
  })

  test('a source that turns out to hold less is read so at once at every fill site that draws on it', () => {
    let sharedCount = 0
    fc.assert(fc.property(anyWithLays, amount(0, END_S), amount(0, 1), (spec, time_s, leftShare) => {
      const scenario = compileShuttle(spec)
      const state = begin(scenario)
      advance(scenario, state, time_s)
      const f = scenario.pools.ofFill.findIndex((pool) => pool >= 0)
      const p = f < 0 ? -1 : scenario.pools.ofFill[f]!
      fc.pre(p >= 0)
      lowerSource(scenario, state, f, leftShare)
      expect(state.pool_gal[p]!).toBeLessThanOrEqual(scenario.pools.usable_gal[p]! * leftShare + 1e-9)
      scenario.pools.ofFill.forEach((pool, at) => {
        if (pool !== p) return
        sharedCount++
        expect(state.source_gal[at]).toBe(state.pool_gal[p])
      })
    }), { numRuns: 100, seed: 24 })
    expect(sharedCount).toBeGreaterThan(100)
  })

  test('a run is the same to the bit when stopped, forked or carried to the same scenario', () => {
    const cuts = fc.array(amount(0, END_S), { minLength: 1, maxLength: 5 }).map((times_s) => [...times_s].sort((a, b) => a - b))
    fc.assert(fc.property(anyWithLays, cuts, (spec, times_s) => {
      const scenario = compileShuttle(spec)
      const straight = begin(scenario)
      advance(scenario, straight, END_S)
      let state = begin(scenario)
      for (const time_s of times_s) {
        advance(scenario, state, time_s)
        const branch = fork(state)
        advance(scenario, state, Math.min(END_S, time_s + 500))
        state = carry(scenario, branch, compileShuttle(structuredClone(spec)))
      }
      advance(scenario, state, END_S)
      expect(areSame(state, straight)).toBe(true)
    }), { numRuns: 300, seed: 22 })
  })

  test('a decision loses no water, whoever comes to the source or leaves it', () => {
    fc.assert(fc.property(anyWithLays, anyWithLays, amount(0, 6000), (spec, other, time_s) => {
      const from = compileShuttle(spec)
      const to = withDemand(compileShuttle(other), 'planned')
      const state = begin(from)
      advance(from, state, time_s)
      const carried = carry(from, state, to)
      for (const after_s of [0, 1500]) {
        advance(to, carried, time_s + after_s)
        const { error_gal, initial_gal, drawn_gal } = balanceOf(to, carried)
        expect(Math.abs(error_gal)).toBeLessThan(1e-6 * Math.max(1, Math.abs(initial_gal) + drawn_gal))
      }
      for (let p = 0; p < to.pools.count; p++) {
        expect(carried.pool_gal[p]!).toBeGreaterThanOrEqual(0)
        expect(carried.pool_gal[p]!).toBeLessThanOrEqual(to.pools.usable_gal[p]!)
      }
    }), { numRuns: 400, seed: 23 })
  })
})
