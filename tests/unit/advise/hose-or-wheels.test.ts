import { describe, expect, test } from 'vitest'
import { finish } from '@/lib/advise'
import { breakEven, equipmentOf, firstPart, hoseOrWheels, stretchesFor, type Candidate } from '@/lib/advise/hose-or-wheels'
import type { Bundle } from '@/lib/plan'
import { smallBundle } from '../../fixtures/bundle'

const as = (bundle: Bundle): Bundle => bundle
const pond: Candidate = { fromId: 'ds1', name: 'Mill pond', point: { lat: 45.02, lon: -40 }, way: [{ lat: 45.02, lon: -40 }, { lat: 45, lon: -40.05 }] }
/** One engine at the pond beside the one at the dump site, one tender, so much 4 in hose: nobody queues. */
const one = (hose_ft: number, changes: Readonly<Record<string, unknown>> = {}) => smallBundle({
  'district.equipment.1': { id: 'hose4', name: '4 in hose', kind: 'hose', size_in: 4, length_ft: hose_ft },
  'plan.firstDueId': undefined, 'plan.tenders': [], 'district.apparatus.3': { id: 't2', name: 'Tender 2', kind: 'tender' }, ...changes,
})
const curveOf = (bundle: Bundle) => finish(breakEven(bundle, pond, equipmentOf(bundle), as))!

describe('hose for a lay', () => {
  test('is of the widest size as many lines as reach; where that ends, the next', () => {
    const hose = [{ size_in: 5, length_ft: 1000, coefficient: 0.08 }, { size_in: 2.5, length_ft: 2000, coefficient: 2 }]
    expect(stretchesFor(hose, 450)).toEqual([{ size_in: 5, length_ft: 450, lineCount: 2 }])
    expect(stretchesFor(hose, 1800)).toEqual([{ size_in: 5, length_ft: 1000, lineCount: 1 }, { size_in: 2.5, length_ft: 800, lineCount: 2 }])
    expect(stretchesFor(hose, 3100)).toEqual([])
  })

  test('counts what stands in the lists and what pumpers carry, without those left at home', () => {
    const bundle = one(800, { 'district.apparatus.0.supplyHose_in': 5, 'district.apparatus.0.supplyHose_ft': 600 })
    expect(equipmentOf(bundle).hose.map(({ size_in, length_ft }) => [size_in, length_ft])).toEqual([[5, 600], [4, 800]])
    expect(equipmentOf(bundle, new Set(['p1'])).hose).toHaveLength(1)
  })
})

test('the first part of a way ends at its share of the length', () => {
  const way = [{ lat: 45, lon: -40 }, { lat: 45.01, lon: -40 }, { lat: 45.03, lon: -40 }]
  expect(firstPart(way, 0.5).map(({ lat }) => Number(lat.toFixed(6)))).toEqual([45, 45.01, 45.015])
})

describe('flow against distance', () => {
  const { points, even } = curveOf(one(6000))

  test('tenders: another mile costs twice 1.7 min of the handbook’s T = 0.65 + 1.7 D', () => {
    // Water shuttle lesson plan: T = 0.65 + 1.7 D at 35 mph. One tender never queues, so flow = usable / round and
    // usable = 0.9 · 2,000 gal. The duration holds few rounds; the search is good to 0.5 gpm.
    const [near, far] = [points[1]!, points.at(-1)!]
    const round_min = ({ shuttle_gpm }: typeof near) => 1800 / shuttle_gpm
    expect((round_min(far) - round_min(near)) / (far.distance_mi - near.distance_mi)).toBeCloseTo(2 * 1.7, 0)
  })

  test('hose: by hand from FL = C Q² L at the hose’s working pressure', () => {
    // Handbook: C = 0.2 for 4 in (seen). Supply hose works at 185 psi at most, 20 psi is left at the end:
    // Q = 100 √((185 − 20) / (0.2 · L / 100)), hose 5 % longer than the way, one line of it beyond half
    // of what there is. Above some 1,500 ft the pump has more than that to give.
    for (const { distance_mi, relay_gpm } of points.filter((point) => point.distance_mi * 5280 * 1.05 > 3000 && point.distance_mi * 5280 * 1.05 < 6000)) {
      const byHand_gpm = 100 * Math.sqrt((185 - 20) / ((0.2 * distance_mi * 5280 * 1.05) / 100))
      expect(Math.abs(relay_gpm / byHand_gpm - 1)).toBeLessThan(0.02)
    }
  })

  test('no relay brings more than its source gives for as long as supply must last', () => {
    // 12,000 gal over the two hours of the plan, and 30 gpm that run in: 130 gpm.
    const small = curveOf(one(6000, { 'district.sources.0.usable_gal': 12_000, 'district.sources.0.inflow_gpm': 30 }))
    expect(Math.max(...small.points.map(({ relay_gpm }) => relay_gpm))).toBeCloseTo(130, 6)
    const bundle = one(9000, { 'district.sources.0.usable_gal': 12_000, 'district.sources.0.inflow_gpm': 30 })
    const relay = finish(hoseOrWheels(bundle, [{ ...pond, way: [{ lat: 45.02, lon: -40 }, { lat: 45.01, lon: -40 }] }], as)).best.find(({ carriage }) => carriage === 'relay')
    expect(relay!.flow_gpm).toBeCloseTo(130, 6)
  })

  test('is even where both formulas meet, or where the hose ends', () => {
    const round = (distance_mi: number) => 1800 / points[1]!.shuttle_gpm + 3.4 * (distance_mi - points[1]!.distance_mi)
    const hose = (distance_mi: number) => (distance_mi * 5280 * 1.05 > 6000 ? 0 : 100 * Math.sqrt(165 / ((0.2 * distance_mi * 5280 * 1.05) / 100)))
    let [low, high] = [points[0]!.distance_mi, points.at(-1)!.distance_mi]
    for (let i = 0; i < 40; i++) {
      const middle = (low + high) / 2
      if (hose(middle) > 1800 / round(middle)) low = middle
      else high = middle
    }
    expect(Math.abs(even!.distance_mi / low - 1)).toBeLessThan(0.03)
    expect(even!.because).toBe('hose')
  })

  test('with less hose than the crossing needs no relay is drawn beyond it', () => {
    const short = curveOf(one(1500))
    expect(short.points.filter(({ distance_mi }) => distance_mi * 5280 * 1.05 > 1502).every(({ relay_gpm }) => relay_gpm === 0)).toBe(true)
    expect(short.even!.distance_mi * 5280 * 1.05).toBeLessThanOrEqual(1501)
  })
})

describe('relay, shuttle or some of both', () => {
  const bundle = smallBundle({
    'district.apparatus.4': { id: 'p3', name: 'Engine 3', kind: 'pumper', stationId: 'st1', rated_gpm: 1250 },
    'district.apparatus.5': { id: 'p4', name: 'Engine 4', kind: 'pumper', stationId: 'st1', rated_gpm: 1000 },
    'district.equipment.1': { id: 'hose5', name: '5 in hose', kind: 'hose', size_in: 5, length_ft: 20000 },
  })
  const answer = finish(hoseOrWheels(bundle, [pond], as))
  const of = (carriage: string) => answer.best.find((one) => one.carriage === carriage)

  test('every kind is tried, and the best of each stands by its flow', () => {
    expect(answer.best.map(({ carriage }) => carriage).toSorted()).toEqual(['both', 'handOver', 'relay', 'shuttle'])
    const flows = answer.best.map(({ flow_gpm }) => flow_gpm)
    expect(flows).toEqual(flows.toSorted((a, b) => b - a))
    for (const { carriage, flow_gpm } of answer.best) expect(flow_gpm).toBe(Math.max(...answer.tried.filter((trial) => trial.carriage === carriage).map((trial) => trial.flow_gpm)))
  })

  test('what each takes: no tender in a relay, no hose in a shuttle, one pumper at each end of that', () => {
    expect(of('relay')!.tenderIds).toEqual([])
    expect(of('relay')!.hose_ft).toBeGreaterThan(14000)
    expect(of('shuttle')!.hose_ft).toBe(0)
    expect(of('shuttle')!.pumperIds).toHaveLength(2)
    // Two operators, two drivers, three at one bay and three at one position, supply officer and two for traffic.
    expect(of('shuttle')!.crewCount).toBe(2 + 2 + 3 + 3 + 3)
  })

  test('both beside each other bring first what the shuttle brings, then more', () => {
    const both = of('both')!
    expect(both.before!.flow_gpm).toBeCloseTo(of('shuttle')!.flow_gpm, 0)
    expect(both.flow_gpm).toBeGreaterThan(both.before!.flow_gpm)
    expect(both.ready_s).toBeGreaterThan(both.before!.ready_s)
  })

  test('apparatus left at home is in nothing', () => {
    const fewer = finish(hoseOrWheels(bundle, [pond], as, new Set(['p3', 't2'])))
    for (const { pumperIds, tenderIds } of fewer.tried) expect([...pumperIds, ...tenderIds]).not.toEqual(expect.arrayContaining(['p3']))
    expect(fewer.tried.every(({ tenderIds }) => !tenderIds.includes('t2'))).toBe(true)
  })

  test('over open ground tenders take over from nowhere but a road', () => {
    const across = { ...pond, isAcross: true }
    const kinds = (candidate: Candidate) => new Set(finish(hoseOrWheels(bundle, [candidate], as)).tried.map(({ carriage }) => carriage))
    expect(kinds(across).has('handOver')).toBe(false)
    expect(kinds({ ...across, road: pond.way }).has('handOver')).toBe(true)
    expect(finish(hoseOrWheels(bundle, [across], as)).best.find(({ carriage }) => carriage === 'relay')!.isAcross).toBe(true)
  })

  test('hose that does not reach is said, with what there is and what it would take', () => {
    const few = smallBundle({ 'district.equipment.1': { id: 'hose5', name: '5 in hose', kind: 'hose', size_in: 5, length_ft: 1000 } })
    const { short, tried } = finish(hoseOrWheels(few, [pond], as))
    expect(tried.map(({ carriage }) => carriage)).toEqual(['shuttle'])
    expect(short!.hose_ft).toBe(1000)
    // 0.02° of latitude and 0.05° of longitude at 45° are 14,780 ft; hose 5 % longer.
    expect(short!.way_ft / (14_780 * 1.05)).toBeCloseTo(1, 2)
  })

  test('progress grows to its end', () => {
    let before = 0
    const work = hoseOrWheels(bundle, [pond], as)
    for (let step = work.next(); !step.done; step = work.next()) {
      expect(step.value.doneShare).toBeGreaterThanOrEqual(before)
      before = step.value.doneShare
    }
    expect(before).toBeCloseTo(1, 6)
  })
})
