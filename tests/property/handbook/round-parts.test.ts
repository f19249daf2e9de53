import fc from 'fast-check'
import { expect, test } from 'vitest'
import { wholeParts } from '@/app/_handbook/whole-parts'
import { compareHandbook, compilePlan } from '@/lib/supply'
import type { Bundle } from '@/lib/plan'
import { planNumbers, planOf } from '../advise/random-plan'

/** Either way between the sites: timed, by a distance, or as the other way is. */
const way = fc.record({ by: fc.constantFrom('timed', 'distance', 'alike'), tenths: fc.integer({ min: 10, max: 120 }) })

function withWays(bundle: Bundle, ways: readonly { by: string; tenths: number }[]): Bundle {
  const notes = ways.flatMap(({ by, tenths }, index) => {
    const ends = index === 0 ? { fromId: 'du1', toId: 'f1' } : { fromId: 'f1', toId: 'du1' }
    return by === 'alike' ? [] : [{ id: `way${index}`, ...ends, ...(by === 'timed' ? { travel_s: tenths * 6 } : { distance_mi: tenths / 20 }) }]
  })
  return { ...bundle, plan: { ...bundle.plan, legNotes: [...notes, ...bundle.plan.legNotes] as typeof bundle.plan.legNotes } }
}

// Arithmetic, no source needed: the reasons why two rounds differ are the difference.
test('the reasons why a round differs from the form add up to the difference, each named once, whatever the plan', () => {
  fc.assert(fc.property(planNumbers, way, way, (numbers, empty, loaded) => {
    const found = compareHandbook(compilePlan(withWays(planOf(numbers), [empty, loaded])))
    expect(found).toBeDefined()
    for (const { annex, own, simulated, parts } of found?.tenders ?? []) {
      expect(parts.reduce((sum, { more_s }) => sum + more_s, 0)).toBeCloseTo((simulated ?? own).round_s - annex.round_s, 6)
      expect(new Set(parts.map(({ code }) => code)).size).toBe(parts.length)
    }
    expect(found?.steps.reduce((sum, { change_gpm }) => sum + change_gpm, found.rating_gpm)).toBeCloseTo(found?.sustainable_gpm ?? NaN, 6)
  }), { numRuns: 60, seed: 7 })
})

test('as whole seconds they add up to the rounds as written, none further off than one second', () => {
  fc.assert(fc.property(fc.array(fc.double({ min: -500, max: 500, noNaN: true }), { minLength: 1, maxLength: 14 }), fc.double({ min: 0, max: 2000, noNaN: true }), (parts, from_s) => {
    const to_s = parts.reduce((sum, part) => sum + part, from_s)
    const whole = Math.round(to_s) - Math.round(from_s) + 0
    const shown = wholeParts(parts, whole)
    expect(shown.reduce((sum, part) => sum + part, 0)).toBe(whole + 0)
    for (const [index, part] of parts.entries()) expect(Math.abs((shown[index] ?? NaN) - part)).toBeLessThanOrEqual(1)
  }), { numRuns: 300, seed: 7 })
})
