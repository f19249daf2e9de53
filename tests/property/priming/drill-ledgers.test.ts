import fc from 'fast-check'
import { expect, test } from 'vitest'
import { beginDrill, controlNames, drillRig, restControls, stepDrill, type DrillRig } from '../../../lib/priming/drill'
import { judgement } from './judgement'

/** Hands that do anything at all, every second. */
const antics = fc.array(fc.record({ control: fc.constantFrom(...controlNames), to: fc.oneof(fc.constantFrom(0, 1), fc.double({ min: 0, max: 1, noNaN: true })) }), { minLength: 10, maxLength: 60 })
const place = fc.record({ lift_ft: fc.double({ min: 0, max: 24, noNaN: true }), depth_ft: fc.double({ min: 0.2, max: 4, noNaN: true }),
  tankFill_gpmPerSqrtPsi: fc.double({ min: 8, max: 60, noNaN: true }), tankToPump_gpmPerSqrtFt: fc.double({ min: 70, max: 180, noNaN: true }),
  source_sqft: fc.option(fc.double({ min: 80, max: 1000, noNaN: true }), { nil: undefined }) })

function books(rig: DrillRig, tankShare: number, gas: number, moves: readonly { control: (typeof controlNames)[number]; to: number }[]) {
  const state = beginDrill(rig, { tankWater_gal: tankShare * rig.tank_gal, pumpGasShare: gas })
  const controls = { ...restControls }
  const air = state.hoseAir_ftGal + state.pumpAir_ftGal
  const water = state.tankWater_gal + state.pumpWater_gal
  let worstAir = 0
  let worstWater = 0
  for (const { control, to } of moves) {
    controls[control] = to
    for (let step = 0; step < 50; step++) {
      stepDrill(rig, state, controls)
      worstAir = Math.max(worstAir, Math.abs(state.hoseAir_ftGal + state.pumpAir_ftGal + state.airOut_ftGal - state.airIn_ftGal - air))
      worstWater = Math.max(worstWater, Math.abs(state.tankWater_gal + state.pumpWater_gal + state.hoseWater_gal + state.discharged_gal +
        state.overflow_gal + state.primerWater_gal - state.drawn_gal - water))
    }
  }
  return { state, worstAir, worstWater }
}

test('the ledgers of air and water close to a millionth, whatever the hands do', () => {
  fc.assert(fc.property(judgement, place, antics, fc.double({ min: 0, max: 1, noNaN: true }), fc.constantFrom(0, 1), (guess, where, moves, tankShare, gas) => {
    const { worstAir, worstWater } = books(drillRig({ ...guess, ...where }), tankShare, gas, moves)
    expect(worstAir).toBeLessThan(1e-6 * 33.9 * 37)
    expect(worstWater).toBeLessThan(1e-6 * 1000)
  }), { numRuns: 25, endOnFailure: true })
})

test('every state stays in its range, whatever the hands do', () => {
  fc.assert(fc.property(judgement, place, antics, fc.constantFrom(0, 1), (guess, where, moves, gas) => {
    const rig = drillRig({ ...guess, ...where })
    const { state } = books(rig, 0.5, gas, moves)
    for (const value of Object.values(state)) expect(Number.isNaN(value)).toBe(false)
    expect(state.tankWater_gal).toBeGreaterThanOrEqual(-1e-9)
    expect(state.tankWater_gal).toBeLessThanOrEqual(rig.tank_gal)
    expect(state.hoseWater_gal).toBeGreaterThanOrEqual(0)
    expect(state.hoseWater_gal).toBeLessThanOrEqual(rig.hose_gal + 1e-9)
    expect(state.gasShare).toBeGreaterThanOrEqual(0)
    expect(state.gasShare).toBeLessThanOrEqual(1)
    expect(state.eye_absolute_ft).toBeGreaterThanOrEqual(rig.cavitation_absolute_ft - 1e-9)
    expect(state.hoseAir_ftGal).toBeGreaterThanOrEqual(0)
    expect(state.pumpAir_ftGal).toBeGreaterThanOrEqual(0)
  }), { numRuns: 25, endOnFailure: true })
})
