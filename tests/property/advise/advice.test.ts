import fc from 'fast-check'
import { expect, test } from 'vitest'
import { baselineOf, candidatesOf, isTrial, planWith, rankTrials, tryCandidate, type Trial } from '@/lib/advise'
import type { Bundle, EditBody } from '@/lib/plan'
import { planNumbers, planOf } from './random-plan'

const asIs = (bundle: Bundle) => bundle

function frozen<T>(value: T): T {
  if (typeof value === 'object' && value !== null && !Object.isFrozen(value)) {
    Object.freeze(value)
    Object.values(value).forEach(frozen)
  }
  return value
}

test('trying a change never changes the plan it is tried on', () => {
  fc.assert(fc.property(planNumbers, (numbers) => {
    const bundle = frozen(planOf(numbers))
    const before = JSON.stringify(bundle)
    const base = baselineOf(bundle, asIs)
    if (!base) return
    for (const candidate of candidatesOf(bundle, asIs).slice(0, 12)) tryCandidate(base, frozen(candidate), asIs)
    expect(JSON.stringify(bundle)).toBe(before)
  }), { numRuns: 15 })
})

test('the edits of every change can be applied, and their inverses bring back the plan exactly', () => {
  fc.assert(fc.property(planNumbers, (numbers) => {
    const bundle = planOf(numbers)
    for (const candidate of candidatesOf(bundle, asIs)) {
      const there = planWith(bundle.plan, candidate.edits)
      if ('code' in there) throw new Error(`${candidate.id}: ${there.code} ${JSON.stringify(there.values)}`)
      const back = planWith(there.plan, there.inverses)
      if ('code' in back) throw new Error(`${candidate.id}: ${back.code}`)
      expect(back.plan).toEqual(bundle.plan)
    }
  }), { numRuns: 60 })
})

test('no change fills a tender in part, makes a measured time shorter or sends somebody away', () => {
  const fieldsOf = (edit: EditBody): string[] => (edit.kind === 'setFields' ? Object.keys(edit.set) : edit.kind === 'addItem' ? Object.keys(edit.item) : [])
  const forbidden = ['usableShare', 'dumpPosition_s', 'fillPosition_s', 'dumpClear_s', 'fillClear_s', 'travel_s', 'withdraw_s', 'delay_s', 'duration_s', 'reserve_s', 'demand']
  fc.assert(fc.property(planNumbers, (numbers) => {
    for (const { edits, id } of candidatesOf(planOf(numbers), asIs))
      for (const edit of edits) {
        expect(fieldsOf(edit).filter((field) => forbidden.includes(field)), id).toEqual([])
        if (edit.kind === 'removeItem') expect(['legNotes', 'oneLanes']).toContain(edit.collection)
      }
  }), { numRuns: 40 })
})

test('the order in which changes were tried does not change their rank', () => {
  const base = baselineOf(planOf({ tanks: [20, 30, 12, 18], delays_min: [0, 3, 5, 9, 0, 0], distance: 18, lift: 10, bayCount: 1, positionCount: 1, capacity: 20, planned: 2 }), asIs)
  if (!base) throw new Error('the plan has no answer')
  const trials: Trial[] = candidatesOf(base.bundle, asIs).map((candidate) => tryCandidate(base, candidate, asIs)).filter(isTrial)
  // Equal gains and efforts are the hard case.
  const flat = trials.map((trial, index) => (index % 3 === 0 ? { ...trial, gain_gpm: 40, work_s: 600 } : trial))
  const idsOf = (list: readonly Trial[]) => list.map(({ candidate }) => candidate.id)
  fc.assert(fc.property(fc.shuffledSubarray(flat, { minLength: flat.length, maxLength: flat.length }), fc.constantFrom('perEffort' as const, 'gain' as const), (shuffled, by) => {
    const [one, other] = [rankTrials(flat, by), rankTrials(shuffled, by)]
    expect(idsOf(other.helpful)).toEqual(idsOf(one.helpful))
    expect(idsOf(other.unproven)).toEqual(idsOf(one.unproven))
    expect(idsOf(other.idle)).toEqual(idsOf(one.idle))
  }), { numRuns: 60 })
})
