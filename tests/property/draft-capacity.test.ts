import fc from 'fast-check'
import { expect, test } from 'vitest'
import {
  availableHead_ft, calibrateRequiredHead, curveFlow_gpm, draftCapacity, hardSuctionLoss_ft, pumpCurve, ratedSuction, suctionLossAt1000gpm_ft,
  type DraftAsk, type DraftPlace, type PumperHydraulics, type SuctionSetup,
} from '@/lib/hydraulics'

const ratings = [250, 350, 500, 750, 1000, 1250, 1500, 1750, 2000] as const
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true })

const suction: fc.Arbitrary<SuctionSetup> = fc.record({
  size_in: fc.constantFrom(2.5, 3, 4, 4.5, 5, 5.5, 6, 8),
  length_ft: between(8, 60),
  lineCount: fc.integer({ min: 1, max: 3 }),
  strainer: fc.constantFrom('barrel', 'floating', 'low-level'),
  intake: fc.constantFrom('side', 'front', 'rear'),
}, { requiredKeys: ['size_in', 'length_ft', 'lineCount'] })

const place: fc.Arbitrary<DraftPlace> = fc.record({
  lift_ft: between(0, 30), altitude_ft: between(-200, 12_000), water_degF: between(32, 110), barometer_inHg: between(28.5, 31),
})

const pumper: fc.Arbitrary<PumperHydraulics> = fc.record({
  rated_gpm: fc.constantFrom(...ratings),
  dryVacuum_inHg: between(16, 29),
  curvePoints: fc.array(fc.record({ netPressure_psi: between(50, 300), flow_gpm: between(100, 2000) }), { maxLength: 4 }),
  overRating: fc.boolean(),
  testPoints: fc.array(fc.record({ lift_ft: between(3, 20), altitude_ft: between(0, 6000), water_degF: between(35, 80), flow_gpm: between(150, 1800) }), { maxLength: 4 }),
}, { requiredKeys: ['rated_gpm'] })

const ask = fc.oneof(fc.record({ netPressure_psi: between(50, 260) }), fc.record({ discharge_psi: between(40, 240) }))

const draft: fc.Arbitrary<DraftAsk> = fc.record({ pumper, suction, place, ask })

const step = between(0.01, 8)

function neverRises(change: (draft: DraftAsk, by: number) => DraftAsk): void {
  fc.assert(fc.property(draft, step, (one, by) => {
    const before = draftCapacity(one), after = draftCapacity(change(one, by))
    expect(after.suctionSide_gpm).toBeLessThanOrEqual(before.suctionSide_gpm + 1e-9)
    expect(after.flow_gpm).toBeLessThanOrEqual(before.flow_gpm + 1e-6)
  }))
}

test('flow never rises as lift rises', () => neverRises((one, by) => ({ ...one, place: { ...one.place, lift_ft: one.place.lift_ft + by } })))
test('flow never rises as altitude rises', () => neverRises((one, by) => ({ ...one, place: { ...one.place, altitude_ft: one.place.altitude_ft + 500 * by } })))
test('flow never rises as the barometer falls', () => neverRises((one, by) => ({ ...one, place: { ...one.place, barometer_inHg: (one.place.barometer_inHg ?? 30) - by / 4 } })))
test('flow never rises as the water warms', () => neverRises((one, by) => ({ ...one, place: { ...one.place, water_degF: one.place.water_degF + 5 * by } })))

test('flow never rises as the suction hose gets longer', () => {
  fc.assert(fc.property(draft, suction, step, (one, hose, by) => {
    const before = draftCapacity({ ...one, suction: hose }), after = draftCapacity({ ...one, suction: { ...hose, length_ft: hose.length_ft + 10 * by } })
    expect(after.flow_gpm).toBeLessThanOrEqual(before.flow_gpm + 1e-6)
  }))
})

test('flow never falls as another line of suction is added, equal or not', () => {
  fc.assert(fc.property(draft, suction, suction, (one, hose, other) => {
    const alone = draftCapacity({ ...one, suction: hose }).flow_gpm
    expect(draftCapacity({ ...one, suction: { ...hose, lineCount: hose.lineCount + 1 } }).flow_gpm).toBeGreaterThanOrEqual(alone - 1e-6)
    expect(draftCapacity({ ...one, suction: [hose, other] }).flow_gpm).toBeGreaterThanOrEqual(alone - 1e-6)
  }))
})

test('two equal set-ups side by side are one of twice the lines', () => {
  fc.assert(fc.property(suction, (hose) => {
    expect(suctionLossAt1000gpm_ft([hose, hose])).toBeCloseTo(suctionLossAt1000gpm_ft({ ...hose, lineCount: 2 * hose.lineCount }), 9)
  }))
})

test('suction loss goes with the square of the flow', () => {
  fc.assert(fc.property(suction, between(1, 2000), between(0.1, 3), (hose, flow_gpm, factor) => {
    const one = hardSuctionLoss_ft({ ...hose, flow_gpm }), scaled = hardSuctionLoss_ft({ ...hose, flow_gpm: flow_gpm * factor })
    expect(scaled / one / factor ** 2).toBeCloseTo(1, 9)
  }))
})

test('suction loss never rises with the bore', () => {
  fc.assert(fc.property(between(1.5, 9.9), between(0.01, 0.1), between(0, 60), (size_in, by, length_ft) => {
    const at = (bore_in: number) => suctionLossAt1000gpm_ft({ size_in: bore_in, length_ft, lineCount: 1 })
    expect(at(size_in + by)).toBeLessThanOrEqual(at(size_in) + 1e-9)
  }))
})

test('energy: where suction limits, air holds up vapor, lift, hose and pump, and nothing is left', () => {
  fc.assert(fc.property(draft, (one) => {
    const result = draftCapacity(one)
    const used_ft = result.suctionLoss_ft + result.requiredHead_ft + result.margin_ft
    expect(used_ft).toBeCloseTo(availableHead_ft(one.place), 6)
    if (result.limitedBy === 'suction') expect(Math.abs(result.margin_ft)).toBeLessThan(1e-6)
    if (result.limitedBy === 'pump') expect(result.margin_ft).toBeGreaterThanOrEqual(-1e-6)
    if (result.limitedBy === 'lift') expect([result.flow_gpm, result.overLift_ft]).toEqual([0, -result.margin_ft])
    expect(result.vacuumHigh_inHg).toBeGreaterThanOrEqual(result.vacuumLow_inHg)
  }))
})

test('a discharge pressure asked is the net pressure less the correction', () => {
  fc.assert(fc.property(pumper, suction, place, between(40, 240), (pump, hose, at, discharge_psi) => {
    const result = draftCapacity({ pumper: pump, suction: hose, place: at, ask: { discharge_psi } })
    expect(result.discharge_psi).toBeCloseTo(discharge_psi, 9)
    const same = draftCapacity({ pumper: pump, suction: hose, place: at, ask: { netPressure_psi: result.netPressure_psi } })
    if (result.limitedBy === 'suction') expect(same.suctionSide_gpm).toBeCloseTo(result.flow_gpm, 6)
  }))
})

test('a pumper with nothing tested gives its rated flow at its rated lift, hose and altitude', () => {
  for (const rated_gpm of ratings) {
    const { lift_ft, suction: hose } = ratedSuction(rated_gpm)
    const result = draftCapacity({ pumper: { rated_gpm }, suction: hose, place: { lift_ft, altitude_ft: 1000, water_degF: 60 }, ask: { netPressure_psi: 150 } })
    expect(result.suctionSide_gpm).toBeCloseTo(rated_gpm, 6)
    expect(result.flow_gpm).toBeCloseTo(rated_gpm, 6)
  }
})

test('a pump that passes its dry vacuum test still gives its rated flow', () => {
  fc.assert(fc.property(fc.constantFrom(...ratings), between(22, 27), (rated_gpm, dryVacuum_inHg) => {
    const { lift_ft, suction: hose } = ratedSuction(rated_gpm)
    const result = draftCapacity({ pumper: { rated_gpm, dryVacuum_inHg }, suction: hose, place: { lift_ft, altitude_ft: 1000, water_degF: 60 }, ask: { netPressure_psi: 150 } })
    expect(result.suctionSide_gpm).toBeCloseTo(rated_gpm, 6)
  }))
})

test('a pump that fails its dry vacuum test never gains by it at any lift', () => {
  fc.assert(fc.property(fc.constantFrom(...ratings), between(14, 21.9), place, (rated_gpm, dryVacuum_inHg, at) => {
    const hose = ratedSuction(rated_gpm).suction
    const flow = (inHg: number) => draftCapacity({ pumper: { rated_gpm, dryVacuum_inHg: inHg }, suction: hose, place: at, ask: { netPressure_psi: 150 } }).suctionSide_gpm
    expect(flow(dryVacuum_inHg)).toBeLessThanOrEqual(flow(22) + 1e-9)
  }))
})

/** Points of a pump that obeys the law with its own a and b: what a crew would read at these lifts. */
const truePump = fc.record({
  rated_gpm: fc.constantFrom(...ratings),
  a_ft: between(3.2, 14), b_ft: between(1, 14),
  lifts_ft: fc.uniqueArray(fc.integer({ min: 0, max: 17 }), { minLength: 1, maxLength: 5 }),
  altitude_ft: between(0, 4000),
})

test('entered test points are reproduced within 2 %, or an issue says they are not', () => {
  fc.assert(fc.property(truePump, ({ rated_gpm, a_ft, b_ft, lifts_ft, altitude_ft }) => {
    const { suction: hose } = ratedSuction(rated_gpm)
    const loss_ft = suctionLossAt1000gpm_ft(hose) * (rated_gpm / 1000) ** 2
    const testPoints = lifts_ft.flatMap((lift_ft) => {
      const at = { lift_ft, altitude_ft, water_degF: 55 }
      const spare_ft = availableHead_ft(at) - a_ft
      return spare_ft > 0.5 ? [{ ...at, flow_gpm: rated_gpm * Math.sqrt(spare_ft / (loss_ft + b_ft)) }] : []
    })
    fc.pre(testPoints.length > 0)
    const tested: PumperHydraulics = { rated_gpm, testPoints }
    const calibrated = calibrateRequiredHead(tested)
    expect(calibrated.basis).toBe('test-points')
    const disagree = calibrated.issues.some(({ code }) => code === 'test-points-disagree')
    const heads_ft = testPoints.map(({ lift_ft }) => lift_ft)
    // One point, or points spread wide enough to tell a from b, must come back.
    if (testPoints.length === 1 || Math.max(...heads_ft) - Math.min(...heads_ft) >= 4) expect(disagree).toBe(false)
    for (const point of testPoints) {
      const off = draftCapacity({ pumper: tested, suction: hose, place: point, ask: { netPressure_psi: 0 } }).suctionSide_gpm / point.flow_gpm - 1
      if (!disagree) expect(Math.abs(off)).toBeLessThanOrEqual(0.02)
    }
  }))
})

test('the net pressure curve never rises with pressure and keeps every point it was given', () => {
  const points = fc.array(fc.record({ netPressure_psi: between(20, 300), flow_gpm: between(0, 2500) }), { maxLength: 6 })
  fc.assert(fc.property(fc.constantFrom(...ratings), points, fc.boolean(), between(0, 320), between(0, 50), (rated_gpm, own, over, at_psi, by_psi) => {
    const curve = pumpCurve(rated_gpm, own, over)
    expect(curveFlow_gpm(curve, at_psi + by_psi)).toBeLessThanOrEqual(curveFlow_gpm(curve, at_psi) + 1e-6)
    for (const { netPressure_psi, flow_gpm } of own) expect(curveFlow_gpm(curve, netPressure_psi)).toBeGreaterThanOrEqual(flow_gpm - 1e-6)
  }))
})
