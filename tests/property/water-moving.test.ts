import fc from 'fast-check'
import { expect, test } from 'vitest'
import {
  draftLimitHeight_in, draftLimitVolume_gal, dumpRates_gpm, fillRates, frictionLoss_psi, handFigure_gpm, hydrantAvailableFlow_gpm, hydrantResidual_psi,
  layFlow_gpm, layLoss_psi, parallelCoefficient, portableTankCapacity_gal, portableTankDepth_in, portableTankVolume_gal,
  type FillLine, type HoseLay, type PortableTank,
} from '@/lib/hydraulics'

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true })

const lay: fc.Arbitrary<HoseLay> = fc.record({
  size_in: fc.constantFrom(2.5, 3, 4, 5), length_ft: between(50, 2000), lineCount: fc.integer({ min: 1, max: 3 }),
  rise_ft: between(-60, 60), fittingCount: fc.integer({ min: 0, max: 2 }),
})

test('friction goes with the square of the flow and with the length', () => {
  fc.assert(fc.property(between(0.05, 30), between(10, 2000), between(10, 3000), between(0.1, 4), (coefficient, flow_gpm, length_ft, factor) => {
    const one = frictionLoss_psi(coefficient, flow_gpm, length_ft)
    expect(frictionLoss_psi(coefficient, flow_gpm * factor, length_ft) / one / factor ** 2).toBeCloseTo(1, 9)
    expect(frictionLoss_psi(coefficient, flow_gpm, length_ft * factor) / one / factor).toBeCloseTo(1, 9)
  }))
})

test('lines side by side lose less than the best of them, and share the flow so that each loses the same', () => {
  fc.assert(fc.property(fc.array(between(0.05, 30), { minLength: 2, maxLength: 4 }), (coefficients) => {
    const together = parallelCoefficient(coefficients)
    expect(together).toBeLessThan(Math.min(...coefficients))
    const flows_gpm = coefficients.map((coefficient) => 1000 * Math.sqrt(together / coefficient))
    expect(flows_gpm.reduce((a, b) => a + b, 0)).toBeCloseTo(1000, 6)
  }))
})

test('flow of a lay uses up the pressure it was given, or stands at the step of its fittings', () => {
  fc.assert(fc.property(lay, between(5, 200), between(0, 50), (hose, inlet_psi, outlet_psi) => {
    const flow_gpm = layFlow_gpm(hose, inlet_psi, outlet_psi)
    const used_psi = layLoss_psi(hose, flow_gpm)
    if (flow_gpm === 0) expect(used_psi).toBeGreaterThanOrEqual(inlet_psi - outlet_psi - 1e-9)
    else if (Math.abs(flow_gpm - 350) < 1e-9) expect(layLoss_psi(hose, 349.999)).toBeLessThanOrEqual(inlet_psi - outlet_psi + 1e-3)
    else expect(used_psi).toBeCloseTo(inlet_psi - outlet_psi, 6)
  }))
})

const fillLine: fc.Arbitrary<FillLine> = fc.record({
  most_gpm: between(300, 2000), from_psi: between(50, 150), maxDischarge_psi: between(60, 200), trunk: fc.option(lay, { nil: undefined }), bay: lay,
  inletCoefficient: between(30, 300), maxInlet_psi: between(40, 120), fillLimit_gpm: between(200, 1500), bayCount: fc.integer({ min: 1, max: 4 }),
}).map(({ most_gpm, from_psi, maxDischarge_psi, trunk, bay, bayCount, ...inlet }) => ({
  supplyFlow_gpm: (discharge_psi: number) => Math.max(0, Math.min(most_gpm, most_gpm * (1 - (discharge_psi - from_psi) / 200))),
  maxDischarge_psi, trunk,
  bays: Array.from({ length: bayCount }, () => ({ lay: { ...bay, rise_ft: Math.max(0, bay.rise_ft ?? 0) / 4 }, ...inlet })),
}))

test('filling never takes more than supply, vent, inlet and hose allow', () => {
  fc.assert(fc.property(fillLine, (line) => {
    for (const one of fillRates(line).cases) {
      expect(one.total_gpm).toBeLessThanOrEqual(line.supplyFlow_gpm(one.pumpPressure_psi) + 1e-3)
      expect(one.pumpPressure_psi).toBeLessThanOrEqual(line.maxDischarge_psi + 1e-9)
      one.rates_gpm.forEach((rate_gpm, i) => {
        expect(rate_gpm).toBeLessThanOrEqual((line.bays[i]?.fillLimit_gpm ?? 0) + 1e-6)
        expect(one.inletPressures_psi[i]).toBeLessThanOrEqual((line.bays[i]?.maxInlet_psi ?? 0) + 1e-6)
      })
    }
  }))
})

test('energy of a fill line: pump pressure is trunk, bay hose and inlet together where no bay is gated', () => {
  const smooth = fillLine.map((line): FillLine => ({ ...line, trunk: line.trunk && { ...line.trunk, fittingCount: 0 }, bays: line.bays.map((bay) => ({ ...bay, lay: { ...bay.lay, fittingCount: 0 } })) }))
  fc.assert(fc.property(smooth, (line) => {
    for (const one of fillRates(line).cases) {
      const bay = line.bays[0], rate_gpm = one.rates_gpm[0] ?? 0
      // Downhill a fill may need no pump at all: then the fall, not the pump, balances the losses.
      if (!bay || rate_gpm < 1 || one.pumpPressure_psi === 0 || one.limitedBy === 'tender' || one.limitedBy === 'inlet-pressure') continue
      const needed_psi = (line.trunk ? layLoss_psi(line.trunk, one.total_gpm) : 0) + layLoss_psi(bay.lay, rate_gpm) + (one.inletPressures_psi[0] ?? 0)
      expect(needed_psi).toBeCloseTo(one.pumpPressure_psi, 3)
    }
  }))
})

test('the rate of a bay never rises as equal bays beside it come into use', () => {
  fc.assert(fc.property(fillLine, (line) => {
    const rates_gpm = fillRates(line).bayRate_gpm
    rates_gpm.forEach((rate_gpm, i) => expect(rate_gpm).toBeLessThanOrEqual((rates_gpm[i - 1] ?? Infinity) + 1e-3))
  }))
})

const dump = fc.record({
  tank_gal: between(500, 5000), share: between(0.5, 1), fullHead_ft: between(2, 6), emptyHead_ft: between(0, 0.5), diameter_in: between(3, 12), cap_gpm: between(300, 4000),
}).map(({ share, diameter_in, ...rest }) => ({ ...rest, usable_gal: rest.tank_gal * share, opening: { diameter_in } }))

test('dumping takes the same time however finely the load is parted, and never quickens', () => {
  fc.assert(fc.property(dump, fc.integer({ min: 2, max: 40 }), (tank, partCount) => {
    const minutes = (parts: number) => dumpRates_gpm(tank, parts).reduce((total, rate_gpm) => total + tank.usable_gal / parts / rate_gpm, 0)
    // Near the end the square root of a head of nearly nothing loses digits.
    expect(minutes(partCount) / minutes(1)).toBeCloseTo(1, 7)
    const rates_gpm = dumpRates_gpm(tank, partCount)
    rates_gpm.forEach((rate_gpm, i) => {
      expect(rate_gpm).toBeLessThanOrEqual(tank.cap_gpm * (1 + 1e-7))
      expect(rate_gpm).toBeLessThanOrEqual((rates_gpm[i - 1] ?? Infinity) * (1 + 1e-7))
    })
  }))
})

test('closed-form dump time agrees with small steps of the orifice law', () => {
  fc.assert(fc.property(dump, (tank) => {
    const perFoot_gal = tank.tank_gal / (tank.fullHead_ft - tank.emptyHead_ft)
    const parts = 4000, part_gal = tank.usable_gal / parts
    let minutes = 0
    for (let i = 0; i < parts; i++) {
      const head_ft = tank.fullHead_ft - ((i + 0.5) * part_gal) / perFoot_gal
      minutes += part_gal / Math.min(tank.cap_gpm, 29.84 * 0.8 * tank.opening.diameter_in ** 2 * Math.sqrt(head_ft * 62.37 / 144))
    }
    const ours = tank.usable_gal / (dumpRates_gpm(tank, 1)[0] ?? 0)
    expect(Math.abs(ours / minutes - 1)).toBeLessThan(0.01)
  }), { numRuns: 30 })
})

const portable: fc.Arbitrary<PortableTank> = fc.record({ capacity_gal: between(500, 5000), height_in: between(18, 48), slopeShare: between(0, 0.3) }, { requiredKeys: ['capacity_gal', 'height_in'] })

test('depth and volume of a portable tank undo each other', () => {
  fc.assert(fc.property(portable, between(0, 1), (tank, share) => {
    const depth_in = tank.height_in * share
    expect(portableTankDepth_in(tank, portableTankVolume_gal(tank, depth_in))).toBeCloseTo(depth_in, 5)
  }))
})

test('a slope never adds to what a portable tank holds, and level ground holds the nominal volume', () => {
  fc.assert(fc.property(portable, between(0, 0.15), (tank, by) => {
    const slopeShare = tank.slopeShare ?? 0
    expect(portableTankCapacity_gal({ ...tank, slopeShare: slopeShare + by })).toBeLessThanOrEqual(portableTankCapacity_gal(tank) + 1e-9)
    expect(portableTankCapacity_gal({ ...tank, slopeShare: 0 })).toBeCloseTo(tank.capacity_gal, 6)
  }))
})

test('volume of a sloping tank agrees with slices added up', () => {
  fc.assert(fc.property(portable, between(0.05, 1), (tank, share) => {
    const area_sqft = tank.capacity_gal / (1728 / 231) / (tank.height_in / 12), length_ft = Math.sqrt(area_sqft)
    const slices = 2000, depth_ft = (tank.height_in * share) / 12
    let volume_cuft = 0
    for (let i = 0; i < slices; i++) volume_cuft += Math.max(0, depth_ft - (tank.slopeShare ?? 0) * length_ft * ((i + 0.5) / slices)) * (area_sqft / slices)
    expect(portableTankVolume_gal(tank, depth_ft * 12)).toBeCloseTo(volume_cuft * (1728 / 231), 1)
  }))
})

test('the draft limit never falls as flow rises', () => {
  fc.assert(fc.property(portable, between(0, 2000), between(0, 500), (tank, flow_gpm, by) => {
    expect(draftLimitHeight_in(flow_gpm + by)).toBeGreaterThanOrEqual(draftLimitHeight_in(flow_gpm))
    expect(draftLimitVolume_gal(tank, flow_gpm + by)).toBeGreaterThanOrEqual(draftLimitVolume_gal(tank, flow_gpm))
  }))
})

test('a hydrant at its available flow is drawn down to the pressure asked', () => {
  fc.assert(fc.property(between(30, 120), between(0.2, 0.9), between(200, 2000), between(0, 28), (static_psi, share, flow_gpm, at_psi) => {
    const tested = { static_psi, residual_psi: static_psi * share, flow_gpm }
    expect(hydrantResidual_psi(tested, hydrantAvailableFlow_gpm(tested, at_psi))).toBeCloseTo(at_psi, 6)
  }))
})

test('a shuttle by hand never falls as a tender joins and never rises as a round gets longer', () => {
  const tender = fc.record({ tank_gal: between(500, 4000), fill_s: between(30, 600), travel_s: between(60, 3000), dump_s: between(30, 600) })
  fc.assert(fc.property(fc.array(tender, { maxLength: 6 }), tender, between(0, 600), (others, one, by_s) => {
    expect(handFigure_gpm([...others, one])).toBeGreaterThan(handFigure_gpm(others))
    expect(handFigure_gpm([...others, { ...one, travel_s: one.travel_s + by_s }])).toBeLessThanOrEqual(handFigure_gpm([...others, one]))
  }))
})
