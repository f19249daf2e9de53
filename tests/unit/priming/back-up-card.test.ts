import { expect, test } from 'vitest'
import { backUpCard, backUpPrimeWindow, loopVacuum_ft, mostPressure_psi, type BackUpRig, type BackUpSite } from '../../../lib/priming'

const rig: BackUpRig = {
  tank_gal: 1000, tankWater_gal: 750, tankBottom_ft: 0.5, tankTop_ft: 6, tankToPump_gpmPerSqrtFt: 130, tankFill_gpmPerSqrtPsi: 45,
  curve: [{ flow_gpm: 625, pressure_psi: 250 }, { flow_gpm: 875, pressure_psi: 200 }, { flow_gpm: 1250, pressure_psi: 150 }], hose_gal: 25, pump_gal: 12,
}
const site: BackUpSite = { lift_ft: 8, atmosphere_ft: 33.9, cavitation_ft: 7 }
// By hand: z = 0.5 + 0.75·5.5 = 4.625; Q = 45·√145 = 541.87; (Q/130)² = 17.374; vacuum 12.749.

test('a loop between the two ends of its window works with both valves open', () => {
  const window = backUpPrimeWindow(rig, site)
  expect(window.verdict).toBe('works-open')
  expect(window.flow_gpm).toBeCloseTo(541.87, 2)
  expect(window.vacuum_ft).toBeCloseTo(12.749, 2)
  expect(window.top_ft).toBeCloseTo(26.9, 9)
  expect(window.gate).toBeUndefined()
  expect(window.issues).toEqual([])
})

test('the highest lift is the vacuum less the spare and what carried air costs', () => {
  // 12.749 − 0.0975·17.374 − 0.5 = 10.555
  expect(backUpPrimeWindow(rig, site).highestLiftOpen_ft).toBeCloseTo(10.555, 2)
  // At that lift the bottom of the window is the vacuum itself.
  expect(backUpPrimeWindow(rig, { ...site, lift_ft: 10.555 }).bottom_ft).toBeCloseTo(12.749, 2)
})

test('a small fill line wants tank-to-pump gated until the vacuum is in the window', () => {
  const small = { ...rig, tankFill_gpmPerSqrtPsi: 27 }
  const window = backUpPrimeWindow(small, site)
  expect(window.verdict).toBe('gate-tank-to-pump')
  const { gate } = window
  expect(gate?.valve).toBe('tank-to-pump')
  expect(gate?.openShare).toBeGreaterThan(0.5)
  expect(gate?.openShare).toBeLessThan(1)
  expect(loopVacuum_ft(window.flow_gpm, 130, gate?.openShare ?? NaN, window.tankHeight_ft)).toBeCloseTo(gate?.vacuum_ft ?? NaN, 9)
})

test('a big fill line wants the tank fill gated', () => {
  const window = backUpPrimeWindow({ ...rig, tankFill_gpmPerSqrtPsi: 60, tankToPump_gpmPerSqrtFt: 97 }, site)
  expect(window.verdict).toBe('gate-tank-fill')
  expect(window.gate?.openShare).toBeLessThan(1)
  expect(window.highestLiftOpen_ft).toBeUndefined()
})

test('a loop that leaves the eye above the atmosphere drains the tank when the intake opens', () => {
  const window = backUpPrimeWindow({ ...rig, tankFill_gpmPerSqrtPsi: 12 }, site)
  expect(window.vacuum_ft).toBeLessThan(0)
  expect(window.drainsTank).toBe(true)
  expect(window.issues.map(({ code }) => code)).toContain('back-up-drains-tank')
})

test('a lift out of reach says by how much, and the card has only the way out', () => {
  const card = backUpCard(rig, { ...site, lift_ft: 26 }, 150)
  expect(card.window.verdict).toBe('lift-out-of-reach')
  expect(card.issues[0]?.code).toBe('back-up-out-of-reach')
  expect(card.issues[0]?.values.short_ft).toBeCloseTo(26 - card.window.highestLiftGated_ft, 9)
  expect(card.steps.map(({ code }) => code)).toEqual(['give-up'])
  expect(card.budget.primeSlow_s).toBeUndefined()
})

test('coefficients nobody has measured make the verdict unsure, and it says between which', () => {
  const window = backUpPrimeWindow({ ...rig, tankFillRange_gpmPerSqrtPsi: [34, 57] }, site)
  expect(window.verdictRange).toEqual(['gate-tank-to-pump', 'works-open'])
  expect(window.issues.map(({ code }) => code)).toEqual(['back-up-verdict-unsure'])
})

test('a pump that cannot make the pressure at the loop’s flow is told', () => {
  const weak = { ...rig, curve: [{ flow_gpm: 250, pressure_psi: 150 }, { flow_gpm: 500, pressure_psi: 100 }] }
  expect(backUpPrimeWindow(weak, site).issues.map(({ code }) => code)).toEqual(['back-up-loop-pressure'])
})

test('the curve is level before its first point, straight between, nothing beyond', () => {
  expect([0, 625, 750, 1250, 1300].map((flow_gpm) => mostPressure_psi(rig.curve, flow_gpm))).toEqual([250, 250, 225, 150, 0])
  expect(mostPressure_psi([], 100)).toBe(0)
})

test('the open discharge empties the tank before the hose is full of water', () => {
  const { budget } = backUpCard({ ...rig, tankWater_gal: 250 }, site, 500)
  expect(budget.openDischarge_s).toBeCloseTo((230 / 500) * 60, 9)
  expect(budget.emptiesBeforePrime).toBe(true)
})

test('a full tank overflows as soon as draft water comes round the loop', () => {
  const card = backUpCard({ ...rig, tankWater_gal: 1000 }, site, 150)
  expect(card.budget.overflowAfter_s).toBe(0)
  expect(card.issues.map(({ code }) => code)).toEqual(['back-up-overflow-at-once'])
  expect(card.budget.overflowPerTenSeconds_gal).toBeCloseTo(541.87 / 6, 1)
})

test('less than a quarter tank is told', () => {
  expect(backUpCard({ ...rig, tankWater_gal: 200 }, site, 150).issues.map(({ code }) => code)).toContain('back-up-water-short')
})

test('the steps run from shut to draft, tank-to-pump shut only when the intake is full, give up last', () => {
  expect(backUpCard(rig, site, 150).steps.map(({ code }) => code)).toEqual(['close-all-and-check', 'tank-to-pump-open', 'tank-fill-open', 'throttle-up',
    'check-vacuum', 'crack-intake', 'wait-recover', 'open-intake-further', 'intake-full', 'tank-to-pump-shut', 'open-discharge-shut-fill', 'give-up'])
})

test('a gated valve’s step says how far', () => {
  const card = backUpCard({ ...rig, tankFill_gpmPerSqrtPsi: 27 }, site, 150)
  expect(card.steps.find(({ code }) => code === 'tank-to-pump-open')?.openShare).toBe(card.window.gate?.openShare)
  expect(card.steps.find(({ code }) => code === 'tank-fill-open')?.openShare).toBe(1)
})

test('numbers out of range are refused by name', () => {
  expect(() => backUpPrimeWindow({ ...rig, tankWater_gal: 2000 }, site)).toThrow(/tankWater_gal is 2000/)
  expect(() => backUpPrimeWindow(rig, { ...site, cavitation_ft: 40 })).toThrow(/cavitation_ft is 40/)
})
