import { expect, test } from 'vitest'
import {
  applianceLoss_psi, defaultWorkingPressure_psi, handbookRoundTrip_s, handbookTravel_s, handFigure_gpm, hoseCatalog, hoseCoefficient, hydrantAvailableFlow_gpm, layFlow_gpm, layLoss_psi,
  lengthForLoss_ft, parallelCoefficient,
} from '@/lib/hydraulics'

test('where sources differ on a hose the largest coefficient is taken', () => {
  for (const { size_in, coefficient, others } of hoseCatalog) {
    expect(hoseCoefficient(size_in).coefficient).toBe(coefficient)
    for (const other of others) expect(coefficient).toBeGreaterThanOrEqual(other)
  }
})

test('a size between rows lies between them, a size beyond goes on, both marked', () => {
  const between = hoseCoefficient(2.25)
  expect(between.coefficient).toBeLessThan(8)
  expect(between.coefficient).toBeGreaterThan(2)
  expect([between.mark, hoseCoefficient(8).mark, hoseCoefficient(5).mark]).toEqual(['interpolated', 'interpolated', 'seen'])
  expect(hoseCoefficient(8).coefficient).toBeLessThan(0.05)
  expect(() => hoseCoefficient(0)).toThrow(RangeError)
})

test('two lines lose a quarter of one', () => {
  const one = { size_in: 2.5, length_ft: 300 }
  expect(layLoss_psi({ ...one, lineCount: 2 }, 400)).toBeCloseTo(layLoss_psi(one, 400) / 4, 9)
})

test('a measured coefficient replaces the table', () => {
  expect(layLoss_psi({ size_in: 5, length_ft: 1000, coefficient: 0.06 }, 1000)).toBeCloseTo(60, 9)
})

test('a rise costs 0.433 psi a foot, a fall gives it back', () => {
  expect(layLoss_psi({ size_in: 5, length_ft: 0, rise_ft: 100 }, 0)).toBeCloseTo(43.3, 1)
  expect(layLoss_psi({ size_in: 5, length_ft: 0, rise_ft: -100 }, 0)).toBeCloseTo(-43.3, 1)
})

test('a fitting costs nothing below 350 gpm, so a lay may stand at 350', () => {
  const lay = { size_in: 2.5, length_ft: 100, fittingCount: 1 }
  expect([0, 349, 350].map((gpm) => applianceLoss_psi('fitting', gpm))).toEqual([0, 0, 10])
  expect(applianceLoss_psi('master-stream', 0)).toBe(0)
  // 350 gpm loses 24.5 psi without the fitting, 34.5 with it.
  expect([20, 30, 34.5, 42].map((psi) => layFlow_gpm(lay, psi))).toEqual([100 * Math.sqrt(10), 350, 350, 400].map((gpm) => expect.closeTo(gpm, 6)))
})

test('a lay with no pressure left over its rise gives nothing, and with no length no limit', () => {
  expect(layFlow_gpm({ size_in: 5, length_ft: 100, rise_ft: 200 }, 50)).toBe(0)
  expect(layFlow_gpm({ size_in: 5, length_ft: 0 }, 50)).toBe(Infinity)
})

test('LDH is worked at 180 psi, smaller hose at 200', () => {
  expect([2.5, 3, 3.5, 4, 5].map(defaultWorkingPressure_psi)).toEqual([200, 200, 180, 180, 180])
})

test('no travel for no distance, 0.65 min for each leg that is one', () => {
  expect(handbookTravel_s(0)).toBe(0)
  expect(handbookTravel_s(7, 60)).toBeCloseTo(60 * 7.65, 9)
  expect(handbookRoundTrip_s(2, 3, 60)).toBeCloseTo(60 * (5 + 1.3), 9)
})

test('a hydrant whose static is no more than 20 psi gives nothing', () => {
  expect(hydrantAvailableFlow_gpm({ static_psi: 20, residual_psi: 10, flow_gpm: 500 })).toBe(0)
  expect(() => hydrantAvailableFlow_gpm({ static_psi: 50, residual_psi: 50, flow_gpm: 500 })).toThrow('static_psi')
})

test('no tender hauls nothing, and a round without time throws', () => {
  expect(handFigure_gpm([])).toBe(0)
  expect(() => handFigure_gpm([{ tank_gal: 1000, fill_s: 0, travel_s: 0, dump_s: 0 }])).toThrow(RangeError)
})

test('lines that are none, and flows that are none, throw', () => {
  expect(() => parallelCoefficient([])).toThrow('coefficients')
  expect(() => lengthForLoss_ft(2, 0, 10)).toThrow('flow_gpm')
})
