import fc from 'fast-check'
import { expect, test } from 'vitest'
import { addingUp } from '@/app/_review/adding-up'

test('whole numbers add up to the total as it is rounded, each within one of its value', () => {
  expect(addingUp([0.4, 0.4, 0.4])).toEqual([1, 0, 0])
  expect(addingUp([-1.5, 2.5, -0.3])).toEqual([-1, 2, 0])
  fc.assert(fc.property(fc.array(fc.double({ min: -1000, max: 1000, noNaN: true }), { maxLength: 12 }), (values) => {
    const shown = addingUp(values)
    expect(shown.reduce((sum, value) => sum + value, 0)).toBe(Math.round(values.reduce((sum, value) => sum + value, 0)) + 0)
    shown.forEach((value, k) => { expect(Math.abs(value - values[k]!)).toBeLessThan(1) })
  }))
})
