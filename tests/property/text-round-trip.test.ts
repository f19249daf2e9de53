import fc from 'fast-check'
import { expect, test } from 'vitest'
import { entryText, formatQuantity, parseQuantity, unitSystems } from '@/app/_text'
import { displayUnit } from '@/app/_text/display-unit'
import { defaultRange } from '@/app/_text/entry-range'
import { decimalsFor } from '@/app/_text/rounding'
import { units } from '@/lib/units'

const cases = fc.record({ unit: fc.constantFrom(...units), system: fc.constantFrom(...unitSystems), at: fc.double({ min: 0, max: 1, noNaN: true }), bend: fc.integer({ min: 1, max: 6 }) })

/** Half a step of what is shown, in the inside unit, and a hair for binary noise. */
function halfStep(value: number, unit: (typeof units)[number], system: (typeof unitSystems)[number], more = 0): number {
  const { factor, offset } = displayUnit(unit, system)
  const shown = value * factor + offset
  return (0.5 * 10 ** -(decimalsFor(shown, unit, system) + more)) / factor + 1e-9 * Math.max(1, Math.abs(value))
}

test('what is shown, typed back, is the same value within the rounding shown', () => {
  fc.assert(fc.property(cases, ({ unit, system, at, bend }) => {
    const { min, max } = defaultRange(unit)
    const value = min + (max - min) * at ** bend
    const parsed = parseQuantity(formatQuantity(value, unit, system), unit, system, { min: min - 1, max: max * 1.01 + 1 })
    expect(parsed.kind).toBe('value')
    if (parsed.kind === 'value') expect(Math.abs(parsed.value - value)).toBeLessThanOrEqual(halfStep(value, unit, system))
  }), { numRuns: 2000 })
})

test('what an entry field shows, typed back, is the same value within a tenth of the rounding shown', () => {
  fc.assert(fc.property(cases, ({ unit, system, at, bend }) => {
    const { min, max } = defaultRange(unit)
    const value = min + (max - min) * at ** bend
    const parsed = parseQuantity(entryText(value, unit, system), unit, system, { min: min - 1, max: max * 1.01 + 1 })
    expect(parsed.kind).toBe('value')
    if (parsed.kind === 'value') expect(Math.abs(parsed.value - value)).toBeLessThanOrEqual(halfStep(value, unit, system, unit === 's' ? 0 : 1))
  }), { numRuns: 2000 })
})

test('any text at all is read, refused with a sentence or absent, and never throws', () => {
  fc.assert(fc.property(fc.string({ maxLength: 40 }), fc.constantFrom(...units), fc.constantFrom(...unitSystems), (text, unit, system) => {
    const parsed = parseQuantity(text, unit, system)
    if (parsed.kind === 'value') {
      const { min, max } = defaultRange(unit)
      expect(parsed.value).toBeGreaterThanOrEqual(min - 1e-6)
      expect(parsed.value).toBeLessThanOrEqual(max * (1 + 1e-8))
    } else if (parsed.kind === 'refused') expect(parsed.sentence.length).toBeGreaterThan(10)
  }), { numRuns: 2000 })
})
