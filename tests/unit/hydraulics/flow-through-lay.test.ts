import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { flowThroughLay, layLoss_psi, type HoseLay } from '@/lib/hydraulics'

describe('what a pump sends through a hose lay', () => {
  // Municipal training presentation, hose lay friction (seen), as in tests/reference/hose-friction.json: printed in whole psi.
  const printed: readonly (readonly [number, number, number])[] = [[200, 400, 32], [300, 200, 36], [100, 300, 6]]
  test.each(printed)('%d gpm through %d ft of 2.5 in is what a pump at its loss and what is left gives: %d psi', (flow_gpm, length_ft, loss_psi) => {
    const found = flowThroughLay({ supply_gpm: () => 2000, maxDischarge_psi: loss_psi + 20, lay: { size_in: 2.5, length_ft }, outlet_psi: 20 })
    expect(found.limitedBy).toBe('lay')
    expect(found.flow_gpm).toBeCloseTo(flow_gpm, 5)
    expect(found.spare_gpm).toBeCloseTo(2000 - flow_gpm, 5)
  })

  test('a pump that has no more to give throttles down to what the hose takes', () => {
    // By the same presentation 400 gpm lose 8 · 4² psi in 400 ft of 2.5 in hose.
    const found = flowThroughLay({ supply_gpm: () => 400, maxDischarge_psi: 200, lay: { size_in: 2.5, length_ft: 400 }, outlet_psi: 20 })
    expect(found).toMatchObject({ flow_gpm: 400, limitedBy: 'pump' })
    expect(found.discharge_psi).toBeCloseTo(20 + 8 * 4 ** 2, 3)
  })

  test('a rise beyond the pressure lets nothing through', () => {
    expect(flowThroughLay({ supply_gpm: () => 500, maxDischarge_psi: 100, lay: { size_in: 5, length_ft: 100, rise_ft: 250 }, outlet_psi: 20 }).flow_gpm).toBe(0)
  })

  test('never more than the pump gives at its pressure, nor than the pressure covers, and one of both is used up', () => {
    const lays: fc.Arbitrary<HoseLay> = fc.record({ size_in: fc.constantFrom(2.5, 3, 4, 5), length_ft: fc.integer({ min: 50, max: 3000 }), lineCount: fc.integer({ min: 1, max: 3 }), rise_ft: fc.integer({ min: -100, max: 150 }) })
    fc.assert(fc.property(lays, fc.integer({ min: 50, max: 200 }), fc.integer({ min: 200, max: 2000 }), (lay, maxDischarge_psi, idle_gpm) => {
      // A straight falling curve.
      const supply_gpm = (psi: number) => Math.max(0, idle_gpm * (1 - psi / 300))
      const { flow_gpm, discharge_psi, limitedBy } = flowThroughLay({ supply_gpm, maxDischarge_psi, lay, outlet_psi: 20 })
      expect(discharge_psi).toBeLessThanOrEqual(maxDischarge_psi)
      expect(flow_gpm).toBeLessThanOrEqual(supply_gpm(discharge_psi) + 1e-9)
      if (flow_gpm > 0) {
        const spare_psi = discharge_psi - 20 - layLoss_psi(lay, flow_gpm)
        expect(spare_psi).toBeGreaterThan(-1e-3)
        if (limitedBy === 'lay') expect(spare_psi).toBeLessThan(1e-3)
      }
    }))
  })
})
