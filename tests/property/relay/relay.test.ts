import fc from 'fast-check'
import { expect, test } from 'vitest'
import { arrangementAt, bestArrangement, compileRelay, planRelay, pressurePlot, type Placed, type RelaySpec } from '@/lib/relay'
import { atPond } from '../../unit/relay/lays'

const LENGTH_FT = 4000

const ground = fc.array(fc.integer({ min: 0, max: 260 }), { minLength: 2, maxLength: 6 })
  .map((heights) => heights.map((height_ft, i) => ({ distance_ft: (LENGTH_FT * i) / (heights.length - 1), height_ft })))
const rating = fc.constantFrom(500, 750, 1000, 1250, 1500)
const hose = fc.constantFrom([{ size_in: 5 }], [{ size_in: 4 }], [{ size_in: 3 }, { size_in: 3 }], [{ size_in: 2.5 }, { size_in: 3 }])
const fitting = fc.option(fc.integer({ min: 100, max: LENGTH_FT - 100 }), { nil: undefined })

const relay = fc.record({ profile: ground, ratings: fc.array(rating, { maxLength: 3 }), lines: hose, lift_ft: fc.integer({ min: 2, max: 16 }), fitting, mode: fc.constantFrom('closed' as const, 'open' as const) })
  .map(({ profile, ratings, lines, lift_ft, fitting: at_ft, mode }): RelaySpec => ({
    mode, profile,
    source: { id: 'source', kind: 'draft', draft: atPond({ rated_gpm: 1250 }, lift_ft) },
    pumpers: ratings.map((rated_gpm, i) => ({ id: `p${i}`, pumper: { rated_gpm } })),
    lay: [{ length_ft: LENGTH_FT, lines, appliances: at_ft === undefined ? [] : [{ at_ft, kind: 'fitting' }] }],
  }))

const flowOf = (spec: RelaySpec): number => bestArrangement(compileRelay(spec)).flow_gpm
/** Flows are searched to less than this. */
const GRAIN_GPM = 1e-3
const runs = { numRuns: 60 }

test('energy falls along the flow, but for pumps', () => {
  fc.assert(fc.property(relay, (spec) => {
    const result = planRelay(spec)
    const stands = result.pumpers.map(({ at_ft }) => at_ft)
    const plot = pressurePlot(compileRelay(spec), result)
    plot.forEach((point, i) => {
      const before = plot[i - 1]
      if (before && !(before.at_ft === point.at_ft && stands.includes(point.at_ft))) expect(point.head_ft).toBeLessThanOrEqual(before.head_ft + 1e-6)
    })
  }), runs)
})

test('every pressure stays within its hose, flowing and stopped, and every intake keeps its residual', () => {
  fc.assert(fc.property(relay, (spec) => {
    const result = planRelay(spec)
    for (const { flowing_psi, stopped_psi, working_psi } of pressurePlot(compileRelay(spec), result)) {
      expect(flowing_psi).toBeLessThanOrEqual(working_psi + 1e-4)
      expect(stopped_psi).toBeLessThanOrEqual(working_psi + 1e-4)
      expect(flowing_psi).toBeGreaterThanOrEqual(5 - 1e-4)
    }
    for (const { intake_psi, capacityShare, discharge_psi, dischargeLimit_psi } of result.pumpers) {
      if (intake_psi !== undefined) expect(intake_psi).toBeGreaterThanOrEqual(20 - 1e-4)
      expect(capacityShare).toBeLessThanOrEqual(1 + 1e-4)
      expect(discharge_psi).toBeLessThanOrEqual(dischargeLimit_psi + 1e-4)
    }
    if (result.flow_gpm > 0) expect(result.legs.at(-1)?.arrival_psi).toBeGreaterThanOrEqual(20 - 1e-4)
  }), runs)
})

test('adding a pumper never lowers the best flow', () => {
  fc.assert(fc.property(relay, rating, (spec, rated_gpm) => {
    const more = { ...spec, pumpers: [...spec.pumpers, { id: 'more', pumper: { rated_gpm } }] }
    expect(flowOf(more)).toBeGreaterThanOrEqual(flowOf(spec) - GRAIN_GPM)
  }), runs)
})

test('flow never rises with the residual asked, with friction, or with a fitting more', () => {
  fc.assert(fc.property(relay, fc.integer({ min: 100, max: LENGTH_FT - 100 }), (spec, at_ft) => {
    const now_gpm = flowOf(spec) + GRAIN_GPM
    expect(flowOf({ ...spec, wanted: { residual_psi: 35, outlet_psi: 35, tankInlet_psi: 10 } })).toBeLessThanOrEqual(now_gpm)
    expect(flowOf({ ...spec, lay: spec.lay.map((one) => ({ ...one, lines: one.lines.map(({ size_in }) => ({ size_in: size_in * 0.9 })) })) })).toBeLessThanOrEqual(now_gpm)
    expect(flowOf({ ...spec, lay: spec.lay.map((one) => ({ ...one, appliances: [...(one.appliances ?? []), { at_ft, kind: 'fitting' as const }] })) })).toBeLessThanOrEqual(now_gpm)
  }), { numRuns: 40 })
})

test('fewer places to stand never raise the flow', () => {
  fc.assert(fc.property(relay, fc.subarray([400, 1100, 1900, 2600, 3300]), (spec, few) => {
    const all = { ...spec, stations_ft: [400, 1100, 1900, 2600, 3300] }
    expect(flowOf({ ...spec, stations_ft: few })).toBeLessThanOrEqual(flowOf(all) + GRAIN_GPM)
    if (spec.mode === 'closed') expect(flowOf(all)).toBeLessThanOrEqual(flowOf(spec) + GRAIN_GPM)
  }), runs)
})

/** All ways to place some of the pumpers, in any order, at the stations; never two at one. */
function* placings(ids: readonly string[], stations_ft: readonly number[]): Generator<Placed[]> {
  yield []
  for (const [i, at_ft] of stations_ft.entries()) {
    for (const id of ids) for (const rest of placings(ids.filter((other) => other !== id), stations_ft.slice(i + 1))) yield [{ id, at_ft }, ...rest]
  }
}

test('no placing of any of the pumpers at the places allowed carries more than the one found', () => {
  fc.assert(fc.property(relay, (spec) => {
    const stations_ft = [500, 1200, 2100, 2900]
    const relayThere = compileRelay({ ...spec, stations_ft })
    let most_gpm = 0
    for (const placing of placings(spec.pumpers.map(({ id }) => id), stations_ft)) {
      most_gpm = Math.max(most_gpm, arrangementAt(relayThere, [{ id: 'source', at_ft: 0 }, ...placing]).flow_gpm)
    }
    expect(bestArrangement(relayThere).flow_gpm).toBeGreaterThanOrEqual(most_gpm - GRAIN_GPM)
  }), { numRuns: 40 })
})

test('the places found carry the flow found, and a lesser flow asks no more of any pump', () => {
  fc.assert(fc.property(relay, fc.double({ min: 0.3, max: 0.95, noNaN: true }), (spec, share) => {
    const compiled = compileRelay(spec)
    const { flow_gpm, placed } = bestArrangement(compiled)
    if (flow_gpm === 0) return
    expect(arrangementAt(compiled, placed).flow_gpm).toBeGreaterThanOrEqual(flow_gpm - GRAIN_GPM)
    const hardest = (wanted_gpm: number) => Math.max(...planRelay(spec, { wanted_gpm, placed }).pumpers.map(({ capacityShare }) => capacityShare))
    expect(hardest(flow_gpm * share)).toBeLessThanOrEqual(hardest(flow_gpm) + 1e-3)
  }), runs)
})
