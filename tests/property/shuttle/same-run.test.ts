import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  advance, balanceOf, begin, carry, compileShuttle, fork, runShuttle, withDemand, withSeed, type ShuttleSpec, type SimState, type Spread,
} from '@/lib/shuttle'
import { anySpec } from './spec-arbitrary'

const END_S = 9000
const cuts = fc.array(fc.double({ min: 0, max: END_S, noNaN: true }), { minLength: 1, maxLength: 6 })
  .map((times_s) => [...times_s].sort((a, b) => a - b))

const bytesOf = (state: SimState): Buffer => Buffer.from(state.buffer)
const areSame = (a: SimState, b: SimState): boolean => bytesOf(a).equals(bytesOf(b))

function straightRun(spec: ShuttleSpec): SimState {
  const scenario = compileShuttle(spec)
  const state = begin(scenario)
  advance(scenario, state, END_S)
  return state
}

/** Every stage a little uncertain, each night and each trip. */
function withSpread(spec: ShuttleSpec): ShuttleSpec {
  const some: Spread = { night: { lowFactor: 0.9, modeFactor: 1, highFactor: 1.3 }, trip: { lowFactor: 0.8, modeFactor: 1, highFactor: 1.5 } }
  return {
    ...spec,
    fills: spec.fills.map((fill) => ({ ...fill, spread: { fill: some } })),
    tenders: spec.tenders.map((tender) => ({ ...tender, spread: { dump: some, toFill: some, fill: some, toDump: some, dumpPosition: some } })),
  }
}

describe('a run', () => {
  test('is the same to the bit for the same spec', () => {
    fc.assert(fc.property(anySpec, (spec) => {
      expect(areSame(straightRun(structuredClone(spec)), straightRun(spec))).toBe(true)
    }), { numRuns: 100, seed: 11 })
  })

  test('is the same to the bit when stopped and forked anywhere', () => {
    fc.assert(fc.property(anySpec, cuts, (spec, times_s) => {
      const scenario = compileShuttle(withSpread(spec))
      const straight = begin(scenario)
      advance(scenario, straight, END_S)
      let state = begin(scenario)
      for (const time_s of times_s) {
        advance(scenario, state, time_s)
        const branch = fork(state)
        advance(scenario, state, Math.min(END_S, time_s + 500))
        state = branch
      }
      advance(scenario, state, END_S)
      expect(areSame(state, straight)).toBe(true)
    }), { numRuns: 150, seed: 12 })
  })

  test('is the same to the bit when carried to the same scenario', () => {
    fc.assert(fc.property(anySpec, cuts, (spec, times_s) => {
      const scenario = compileShuttle(withSpread(spec))
      const straight = begin(scenario)
      advance(scenario, straight, END_S)
      let state = begin(scenario)
      for (const time_s of times_s) {
        advance(scenario, state, time_s)
        state = carry(scenario, state, compileShuttle(structuredClone(scenario.spec)))
      }
      advance(scenario, state, END_S)
      expect(areSame(state, straight)).toBe(true)
    }), { numRuns: 200, seed: 13 })
  })

  test('does not depend on the seed without spread, and does with it', () => {
    let differing = 0
    fc.assert(fc.property(anySpec, (spec) => {
      const plain = compileShuttle(spec)
      expect(runShuttle(withSeed(plain, 5))).toEqual(runShuttle(plain))
      const varied = compileShuttle(withSpread(spec))
      expect(runShuttle(varied)).toEqual(runShuttle(varied))
      if (runShuttle(withSeed(varied, 5)).delivered_gal !== runShuttle(withSeed(varied, 6)).delivered_gal) differing++
    }), { numRuns: 200, seed: 14 })
    expect(differing).toBeGreaterThan(20)
  })

  test('keeps the chances of the others when a tender is added', () => {
    fc.assert(fc.property(anySpec, (base) => {
      // With places for everyone nobody gets into anybody's way.
      const spec = withSpread({
        ...base,
        fills: base.fills.map((fill) => ({ ...fill, usable_gal: undefined, bayAfter_s: undefined, flowingBayCount: undefined, bayCount: 12, bayRate_gpm: Array.from({ length: 12 }, () => 500) })),
        dumps: base.dumps.map((dump) => ({ ...dump, positionCount: 12, positionAfter_s: undefined, intakeLimit_gpm: undefined })),
        tenders: base.tenders.map((tender) => ({ ...tender, ways: undefined, lanesToFill: undefined, lanesToDump: undefined })),
      })
      const first = spec.tenders[0]
      if (!first) return
      const more = { ...spec, tenders: [{ ...first, id: 'one-more' }, ...spec.tenders] }
      const before = runShuttle(compileShuttle(spec), { demand: 'open' })
      const after = runShuttle(compileShuttle(more), { demand: 'open' })
      if (before.end_s !== after.end_s) return
      before.tenders.forEach((tender, i) => expect(after.tenders[i + 1]!.given_gal).toBeCloseTo(tender.given_gal, 6))
    }), { numRuns: 100, seed: 15 })
  })
})

describe('a decision', () => {
  test('loses no water: sites and tenders may come, go and change', () => {
    fc.assert(fc.property(anySpec, anySpec, fc.double({ min: 0, max: 6000, noNaN: true }), (spec, other, time_s) => {
      const from = compileShuttle(spec)
      const to = withDemand(compileShuttle(other), 'planned')
      const state = begin(from)
      advance(from, state, time_s)
      const before = fork(state)
      const carried = carry(from, state, to)
      expect(areSame(state, before)).toBe(true)
      for (const after_s of [0, 1500]) {
        advance(to, carried, time_s + after_s)
        const { error_gal, initial_gal, drawn_gal } = balanceOf(to, carried)
        expect(Math.abs(error_gal)).toBeLessThan(1e-6 * Math.max(1, Math.abs(initial_gal) + drawn_gal))
      }
    }), { numRuns: 500, seed: 16 })
  })
})
