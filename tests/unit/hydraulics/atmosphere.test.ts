import { expect, test } from 'vitest'
import { STANDARD_BAROMETER_INHG, atmosphericHead_ft, boilingPoint_degF, floatFactor, vaporHead_ft, vaporPressure_psi } from '@/lib/hydraulics'

test('a standard barometer changes nothing, a low one lowers the air in proportion', () => {
  expect(STANDARD_BAROMETER_INHG).toBeCloseTo(29.92, 2)
  expect(atmosphericHead_ft(3000, STANDARD_BAROMETER_INHG)).toBeCloseTo(atmosphericHead_ft(3000), 9)
  expect(atmosphericHead_ft(3000, 29) / atmosphericHead_ft(3000)).toBeCloseTo(29 / 29.92, 4)
})

test('boiling point and vapor pressure undo each other', () => {
  for (const degF of [33, 60, 100, 150, 211]) expect(boilingPoint_degF(vaporPressure_psi(degF))).toBeCloseTo(degF, 6)
})

test('a float factor is held at both ends of its table', () => {
  expect([0.3, 7.5, 40].map(floatFactor)).toEqual([0.66, expect.closeTo(0.765, 9), 0.8])
})

test('figures outside the air or the liquid throw', () => {
  expect(() => atmosphericHead_ft(40_000)).toThrow('altitude_ft')
  expect(() => atmosphericHead_ft(0, 20)).toThrow('barometer_inHg')
  expect(() => vaporHead_ft(31)).toThrow('water_degF')
  expect(() => boilingPoint_degF(20)).toThrow('pressure_psi')
})
