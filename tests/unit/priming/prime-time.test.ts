import { expect, test } from 'vitest'
import { primerCapacity_gpm, primeTime } from '../../../lib/priming'

const ask = { primer: { capacity_gpm: 80, stall_ft: 26 }, hose_gal: 20, pump_gal: 10, lift_ft: 10, atmosphere_ft: 33.9, rated_gpm: 1000 }

test('a primer moves its free capacity at no vacuum, half of it half way to its stall, nothing beyond', () => {
  expect([0, 13, 26, 30].map((vacuum_ft) => primerCapacity_gpm(ask.primer, vacuum_ft))).toEqual([80, 40, 0, 0])
})

test('the air to remove is hose and pump together', () => {
  expect(primeTime(ask).air_gal).toBe(30)
})

test('the pump is filled at the capacity left at the lift, after the hose', () => {
  const { expected_s = NaN, hose_s = NaN } = primeTime(ask)
  expect(expected_s - hose_s).toBeCloseTo((60 * 10) / (80 * (1 - 10 / 26)), 9)
})

test('a lift beyond the primer says by how much, and gives no time', () => {
  const { expected_s, issues } = primeTime({ ...ask, lift_ft: 25, pumpTop_ft: 2 })
  expect(expected_s).toBeUndefined()
  // 1 inHg holds 1.1339 ft of water at 60 °F (12 in of water over 13.6 times as much mercury): 27 ft is 23.8, 26 ft 22.9.
  expect(issues).toMatchObject([{ code: 'primer-cannot-lift', severity: 'block', values: { needed_inHg: expect.closeTo(23.8, 1), most_inHg: expect.closeTo(22.9, 1), short_inHg: expect.closeTo(0.88, 1) } }])
})

test('over the limit it says which capacity would do, and that capacity does', () => {
  const slow = primeTime({ ...ask, hose_gal: 40 })
  expect(slow.issues.map(({ code }) => code)).toEqual(['prime-over-limit'])
  const { expected_s } = primeTime({ ...ask, hose_gal: 40, primer: { ...ask.primer, capacity_gpm: slow.neededCapacity_gpm ?? NaN } })
  expect(expected_s).toBeCloseTo(slow.limit_s, 9)
})

test('the allowance wants an auxiliary intake of a cubic foot', () => {
  expect(primeTime({ ...ask, hasAuxiliaryIntake: true, auxiliary_gal: 8 }).allowance_s).toBe(15)
  expect(primeTime({ ...ask, hasAuxiliaryIntake: true, auxiliary_gal: 7 }).allowance_s).toBe(0)
  expect(primeTime({ ...ask, hasAuxiliaryIntake: true }).allowance_s).toBe(0)
})

test('numbers out of range are refused by name', () => {
  expect(() => primeTime({ ...ask, lift_ft: -1 })).toThrow(/lift_ft is -1/)
  expect(() => primeTime({ ...ask, primer: { capacity_gpm: 0, stall_ft: 26 } })).toThrow(/capacity_gpm is 0/)
})
