import { expect, test } from 'vitest'
import { plausibleRig, rigFrom } from '../../../lib/priming/drill'

test('with nothing known the rig is the plausible one, to what the laws of hydraulics round', () => {
  const rig = rigFrom()
  for (const key of ['atmosphere_absolute_ft', 'lift_ft', 'depth_ft', 'hose_gal', 'suction_gpmPerSqrtFt', 'intake_sqft', 'tankToPump_gpmPerSqrtFt', 'tankFill_gpmPerSqrtPsi', 'pump_gal'] as const) {
    expect(rig[key] / plausibleRig[key], key).toBeCloseTo(1, 2)
  }
})

// Loss of 20 ft with strainer at 1,000 gpm: 20.0, 8.4, 3.4 ft for 4, 5, 6 in (handbook table, from memory).
test('suction follows the loss table: 1,000 gpm over the root of its loss', () => {
  expect([4, 5, 6].map((suction_in) => Math.round(rigFrom({ suction_in, suction_ft: 20 }).suction_gpmPerSqrtFt))).toEqual([224, 345, 542])
})

test('a measured tank line and fill line go before the assumed ones', () => {
  const rig = rigFrom({ tankToPump_gpm: 500, tankToPumpDrop_ft: 25, tankFill_gpm: 301 })
  expect(rig.tankToPump_gpmPerSqrtFt).toBe(100)
  expect(rig.tankFill_gpmPerSqrtPsi).toBeCloseTo(301 / Math.sqrt(145), 9)
})

test('altitude takes atmosphere and warm water raises what the eye keeps', () => {
  expect(rigFrom({}, { altitude_ft: 5000 }).atmosphere_absolute_ft).toBeLessThan(29)
  expect(rigFrom({}, { water_degF: 100 }).cavitation_absolute_ft).toBeGreaterThan(rigFrom().cavitation_absolute_ft + 1.5)
})

test('water above the intake is taken as no lift', () => {
  expect(rigFrom({}, { lift_ft: -3 }).lift_ft).toBe(0)
})

test('a small pumper has a small pump and the least tank line of its tank', () => {
  const rig = rigFrom({ rated_gpm: 500, tank_gal: 300 })
  expect(rig.pump_gal).toBeLessThan(plausibleRig.pump_gal)
  expect(rig.tankToPump_gpmPerSqrtFt).toBeCloseTo(plausibleRig.tankToPump_gpmPerSqrtFt / 2, 9)
})
