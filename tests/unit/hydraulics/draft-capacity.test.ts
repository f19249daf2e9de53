import { describe, expect, test } from 'vitest'
import { assumedIntakeExtraAt1000gpm_ft, draftCapacity, draftSupply, type DraftAsk } from '@/lib/hydraulics'

/** The classical table's own conditions: 1,000 gpm pump, 20 ft of 5 in, 10 ft lift, 1,000 ft, 60 °F, 150 psi net. */
const rated: DraftAsk = {
  pumper: { rated_gpm: 1000 },
  suction: { size_in: 5, length_ft: 20, lineCount: 1 },
  place: { lift_ft: 10, altitude_ft: 1000, water_degF: 60 },
  ask: { netPressure_psi: 150 },
}
const at = (change: Partial<DraftAsk>, lift_ft = rated.place.lift_ft) => draftCapacity({ ...rated, place: { ...rated.place, lift_ft }, ...change })
const codes = (result: ReturnType<typeof draftCapacity>) => result.issues.map(({ code }) => code)

test('at the rating both sides agree and nothing is left over', () => {
  const result = at({})
  expect(result.flow_gpm).toBeCloseTo(1000, 6)
  expect(result.limitedBy).toBe('suction')
  expect(result.margin_ft).toBeCloseTo(0, 9)
  expect(result.suctionLoss_ft).toBeCloseTo(8.4, 9)
})

test('a high net pressure makes the pump the limit and leaves suction head over', () => {
  const result = at({ ask: { netPressure_psi: 250 } })
  expect(result).toMatchObject({ limitedBy: 'pump', flow_gpm: 500 })
  expect(result.margin_ft).toBeGreaterThan(10)
})

test('a net pressure no point covers gives no flow and blocks', () => {
  const result = at({ ask: { netPressure_psi: 260 } })
  expect(result.flow_gpm).toBe(0)
  expect(codes(result)).toContain('net-pressure-beyond-curve')
})

test('an impossible lift says by how many feet', () => {
  const result = at({}, 27.3)
  expect(result).toMatchObject({ limitedBy: 'lift', flow_gpm: 0 })
  expect(result.overLift_ft).toBeCloseTo(2, 9)
  expect(result.zeroFlowLift_ft).toBeCloseTo(25.3, 9)
  expect(result.issues).toContainEqual(expect.objectContaining({ code: 'lift-impossible', severity: 'block' }))
})

test('lift above 20 ft and vacuum above 20 inHg are warned of', () => {
  expect(codes(at({}, 21))).toEqual(expect.arrayContaining(['lift-over-20ft', 'vacuum-over-20inHg']))
  expect(codes(at({ ask: { netPressure_psi: 250 } }, 10))).not.toContain('vacuum-over-20inHg')
})

test('the vacuum gauge reads lift and loss, and up to the velocity head more', () => {
  const { vacuumLow_inHg, vacuumHigh_inHg } = at({ ask: { netPressure_psi: 250 } })
  // 10 ft + 8.4 ft / 4 = 12.1 ft; velocity head of 500 gpm in 5 in 1.04 ft; 1.134 ft an inHg.
  expect(vacuumLow_inHg).toBeCloseTo(12.1 / 1.134, 1)
  expect(vacuumHigh_inHg).toBeCloseTo(13.14 / 1.134, 1)
})

test('a gauge never reads more vacuum than there is air', () => {
  expect(at({}, 60).vacuumHigh_inHg).toBeLessThan(29)
})

test('a lift below the water line reads no vacuum', () => {
  expect(at({ ask: { netPressure_psi: 250 } }, -10).vacuumLow_inHg).toBe(0)
})

test('an unmeasured front intake is flagged, and its range stands beside the flow', () => {
  const suction = { size_in: 5, length_ft: 20, lineCount: 1, intake: 'front' } as const
  const guessed = at({ suction })
  expect(codes(guessed)).toContain('intake-loss-unmeasured')
  expect(guessed.flowLow_gpm).toBeLessThan(guessed.flow_gpm)
  expect(guessed.flowHigh_gpm).toBeGreaterThan(guessed.flow_gpm)
  const measured = at({ suction: { ...suction, intakeExtraAt1000gpm_ft: assumedIntakeExtraAt1000gpm_ft.front.high_ft } })
  expect(codes(measured)).not.toContain('intake-loss-unmeasured')
  expect(measured.flow_gpm).toBeCloseTo(guessed.flowLow_gpm, 9)
  expect(measured.flowLow_gpm).toBe(measured.flow_gpm)
})

test('a rating whose hose is not known says what it would be through the widest the standard allows', () => {
  const note = at({}, 15).issues.find(({ code }) => code === 'rated-hose-assumed')
  expect(note?.values).toMatchObject({ size_in: 6, lineCount: 1 })
  expect(Number(note?.values.least_gpm)).toBeLessThan(at({}, 15).flow_gpm)
  expect(codes(at({ pumper: { rated_gpm: 1000, ratedSuction: { size_in: 5, length_ft: 20, lineCount: 1 } } }, 15))).not.toContain('rated-hose-assumed')
})

test('priming that cannot reach the top of the pump blocks', () => {
  const pumper = { rated_gpm: 1000, dryVacuum_inHg: 22, pumpTop_ft: 2 }
  expect(codes(at({ pumper }, 22))).toContain('prime-short-of-pump-top')
  expect(codes(at({ pumper }, 20))).not.toContain('prime-short-of-pump-top')
})

test('warm water is noted with the lift it costs', () => {
  const warm = draftCapacity({ ...rated, place: { ...rated.place, water_degF: 100 } })
  expect(warm.issues.find(({ code }) => code === 'warm-water')?.values.lost_ft).toBeCloseTo(1.6, 1)
})

test('cover is asked over a sunk strainer and not over a floating one', () => {
  expect(at({}).strainerCover?.rule_ft).toBe(2)
  expect(at({ suction: { size_in: 5, length_ft: 20, lineCount: 1, strainer: 'floating' } }).strainerCover).toBeUndefined()
})

test('two lines of 6 in lose a quarter of one', () => {
  const one = at({ suction: { size_in: 6, length_ft: 20, lineCount: 1 } }), two = at({ suction: { size_in: 6, length_ft: 20, lineCount: 2 } })
  expect(two.flow_gpm).toBe(one.flow_gpm)
  expect(two.suctionSide_gpm).toBeGreaterThan(one.suctionSide_gpm)
  expect(two.suctionLoss_ft / one.suctionLoss_ft).toBeCloseTo(0.25, 9)
})

test('a dry hydrant brings its own pipe and strainer', () => {
  // NRCS sheet: 6 in, 40 ft, two 45° elbows: 6.2 ft at 500 gpm.
  const result = at({
    suction: { size_in: 6, length_ft: 0, lineCount: 1, dryHydrant: { pipe_in: 6, length_ft: 40, elbow45Count: 2 } }, ask: { netPressure_psi: 250 },
  })
  expect(result.flow_gpm).toBeCloseTo(500, 6)
  expect(result.suctionLoss_ft).toBeCloseTo(6.2, 1)
})

test('supply by discharge pressure is the flow of the whole answer', () => {
  const supply = draftSupply(rated)
  for (const discharge_psi of [0, 100, 142, 150, 180, 230, 245, 260]) {
    expect(supply(discharge_psi)).toBeCloseTo(draftCapacity({ ...rated, ask: { discharge_psi } }).flow_gpm, 9)
  }
})

describe('a broken contract throws', () => {
  test.each([
    ['lift_ft', () => at({}, 61)],
    ['netPressure_psi', () => at({ ask: { netPressure_psi: -1 } })],
    ['discharge_psi', () => at({ ask: { discharge_psi: -1 } })],
    ['rated_gpm', () => at({ pumper: { rated_gpm: 0 } })],
    ['lineCount', () => at({ suction: { size_in: 5, length_ft: 20, lineCount: 0 } })],
    ['size_in', () => at({ suction: { size_in: 12, length_ft: 20, lineCount: 1 } })],
    ['setup', () => at({ suction: [] })],
  ])('%s out of range', (name, call) => {
    expect(call).toThrow(RangeError)
    expect(call).toThrow(name)
  })
})
