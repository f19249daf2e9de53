import { expect, test } from 'vitest'
import { assumedInletCoefficient, fillRates, layLoss_psi, orificeFlow_gpm, type FillLine } from '@/lib/hydraulics'

/** A supply that never runs short; 100 ft of 5 in, inlet of 100 gpm per √psi. */
const bay = { lay: { size_in: 5, length_ft: 100 }, inletCoefficient: 100 } as const
const ample: FillLine = { supplyFlow_gpm: () => 5000, maxDischarge_psi: 150, bays: [bay] }

test('a tender takes no more than its vent allows, at the lowest pressure that does it', () => {
  const [one] = fillRates(ample).cases
  expect(one).toMatchObject({ busyCount: 1, limitedBy: 'tender' })
  expect(one?.total_gpm).toBeCloseTo(1000, 4)
  // Hose 0.08 · 100 · 1 = 8 psi, inlet (1000/100)² = 100 psi.
  expect(one?.pumpPressure_psi).toBeCloseTo(108, 4)
  expect(one?.inletPressures_psi[0]).toBeCloseTo(100, 4)
})

test('an inlet takes no more than its pressure allows', () => {
  const [one] = fillRates({ ...ample, bays: [{ ...bay, maxInlet_psi: 49 }] }).cases
  expect(one?.limitedBy).toBe('inlet-pressure')
  expect(one?.total_gpm).toBeCloseTo(700, 4)
})

test('a short supply is shared evenly by equal bays', () => {
  const { bayRate_gpm, cases } = fillRates({ ...ample, supplyFlow_gpm: () => 900, bays: [bay, bay] })
  expect(bayRate_gpm).toEqual([expect.closeTo(900, 3), expect.closeTo(450, 3)])
  expect(cases.map(({ limitedBy }) => limitedBy)).toEqual(['supply', 'supply'])
})

test('the hose limits where the discharge pressure may go no higher', () => {
  const [one] = fillRates({ ...ample, maxDischarge_psi: 54 }).cases
  // 54 psi = (0.08 · 1e-4 · Q²) + Q²/10⁴ = 1.08e-4 Q².
  expect(one?.limitedBy).toBe('discharge-pressure')
  expect(one?.total_gpm).toBeCloseTo(Math.sqrt(54 / 1.08e-4), 4)
})

test('a trunk carries all bays, and its loss is counted once', () => {
  const trunk = { size_in: 5, length_ft: 500 }
  const [, two] = fillRates({ ...ample, trunk, maxDischarge_psi: 100, bays: [bay, bay] }).cases
  const total_gpm = two?.total_gpm ?? 0
  expect(two?.pumpPressure_psi).toBeCloseTo(layLoss_psi(trunk, total_gpm) + layLoss_psi(bay.lay, total_gpm / 2) + (two?.inletPressures_psi[0] ?? 0), 6)
})

test('a bay left alone sees more, and is warned of above its inlet limit', () => {
  const { cases, issues } = fillRates({ ...ample, trunk: { size_in: 4, length_ft: 600 }, bays: [bay, bay] })
  const two = cases[1]
  expect(two?.alonePressures_psi[0]).toBeGreaterThan(two?.inletPressures_psi[0] ?? Infinity)
  const strict = fillRates({ ...ample, trunk: { size_in: 4, length_ft: 600 }, bays: [{ ...bay, maxInlet_psi: 40 }, { ...bay, maxInlet_psi: 40 }] })
  expect(strict.issues.some(({ code }) => code === 'bay-pressure-when-alone')).toBe(true)
  expect(issues.some(({ code }) => code === 'no-fill-flow')).toBe(false)
})

test('a hill the pump cannot climb gives nothing and blocks', () => {
  const { bayRate_gpm, issues } = fillRates({ ...ample, maxDischarge_psi: 40, bays: [{ ...bay, lay: { ...bay.lay, rise_ft: 100 } }] })
  expect(bayRate_gpm).toEqual([0])
  expect(issues.map(({ code }) => code)).toEqual(['no-fill-flow'])
  expect(fillRates({ ...ample, maxDischarge_psi: 40, trunk: { size_in: 5, length_ft: 300, rise_ft: 100 } }).bayRate_gpm).toEqual([0])
})

test('downhill a supply gives no more than it has', () => {
  const { bayRate_gpm } = fillRates({ ...ample, supplyFlow_gpm: () => 200, bays: [{ ...bay, lay: { ...bay.lay, rise_ft: -100 } }] })
  expect(bayRate_gpm[0]).toBeCloseTo(200, 6)
})

test('unequal bays get unequal water', () => {
  const [, two] = fillRates({ ...ample, maxDischarge_psi: 50, bays: [bay, { ...bay, lay: { size_in: 2.5, length_ft: 100 } }] }).cases
  expect(two?.rates_gpm[0]).toBeGreaterThan(two?.rates_gpm[1] ?? Infinity)
})

test('an inlet nobody measured is an opening of its size', () => {
  expect(assumedInletCoefficient(2.5) * Math.sqrt(50)).toBeCloseTo(orificeFlow_gpm(2.5, 50, 0.6), 9)
})

test('no bay, no pressure or no inlet throws', () => {
  expect(() => fillRates({ ...ample, bays: [] })).toThrow('bays')
  expect(() => fillRates({ ...ample, maxDischarge_psi: 0 })).toThrow('maxDischarge_psi')
  expect(() => fillRates({ ...ample, bays: [{ ...bay, inletCoefficient: 0 }] })).toThrow('inletCoefficient')
})
