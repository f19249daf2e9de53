import { expect, test } from 'vitest'
import { loopFlow_gpm, loopVacuum_ft, tankFillCoefficient, tankToPumpCoefficient, tankToPumpCoefficientFromGauge } from '../../../lib/priming'

test('a fill line with one velocity head of loss is an open bore', () => {
  expect(tankFillCoefficient(2, 1)).toBeCloseTo(29.84 * 4, 9)
})

test('four times the loss halves the coefficient', () => {
  expect(tankFillCoefficient(2, 4)).toBeCloseTo(29.84 * 2, 9)
})

test('a coefficient found from a flow and its vacuum gives that vacuum back', () => {
  const c = tankToPumpCoefficient(500, 20, 5)
  expect(c).toBeCloseTo(100, 9)
  expect(loopVacuum_ft(500, c, 1, 5)).toBeCloseTo(20, 9)
})

test('the gauge counts 1.134 ft an inch of mercury', () => {
  expect(tankToPumpCoefficientFromGauge(500, 20 / 1.134, 5)).toBeCloseTo(100, 1)
})

test('half shut, tank-to-pump asks four times the head', () => {
  expect(loopVacuum_ft(200, 100, 0.5, 0)).toBeCloseTo(4 * loopVacuum_ft(200, 100, 1, 0), 9)
})

test('below the pressure that lifts water into the tank nothing flows', () => {
  expect(loopFlow_gpm(30, 1, 4, 5)).toBe(0)
})

test('a tank that pushes harder than the line takes has no coefficient', () => {
  expect(() => tankToPumpCoefficient(100, -5, 5)).toThrow(RangeError)
})
