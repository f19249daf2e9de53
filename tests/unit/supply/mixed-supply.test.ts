import { describe, expect, test } from 'vitest'
import { compilePlan, evaluatePlan, explain, layHeightsKey } from '@/lib/supply'
import { smallBundle } from '../../fixtures/bundle'

const p3 = { id: 'p3', name: 'Engine 3', kind: 'pumper', stationId: 'st1', rated_gpm: 1000 }
const at = (changes: object, others: Readonly<Record<string, unknown>> = {}) => smallBundle({
  'district.apparatus.4': p3,
  'district.sources.1': { id: 'so2', name: 'Brook', kind: 'lake', point: { lat: 45.004, lon: -40.05 } },
  'plan.hoseLays': [{
    id: 'lay1', name: 'Brook line', fromId: 'so2', toId: 'fireGround', points: [{ lat: 45.004, lon: -40.05 }, { lat: 45, lon: -40.05 }], pumperIds: ['p3'],
    stretches: [{ id: 's1', size_in: 5, length_ft: 1000 }], rise_ft: 0, wanted_gpm: 200, lift_ft: 5, ...changes,
  }],
  'plan.legNotes.4': { id: 'l5', fromId: 'st1', toId: 'lay1', distance_mi: 3, travel_s: 300 },
  ...others,
})
const alone = evaluatePlan(smallBundle(), { quick: true })

describe('a hose lay in the plan’s flow', () => {
  test('stands when its pumper is there and it is laid: turnout 120 s, road 300 s, then its set-up time', () => {
    const { lays } = evaluatePlan(at({}), { quick: true })
    // Set-up by the formula of lib/relay/set-up-time: the source pumper's 300 s are longer than 1,000 ft at 250 ft a minute;
    // then 1,000 ft of 5 in hose, 1,020 gal (0.0408 gal per in² and ft), at 200 gpm, and 30 s to bring the pressure up.
    const setUp_s = 300 + (0.0408 * 25 * 1000 * 60) / 200 + 30
    expect(lays![0]!.start_s).toBe(420)
    expect(lays![0]!.ready_s).toBeCloseTo(420 + setUp_s, -1)
  })

  test('to the fire ground before supply is ready adds its flow to what the shuttle sustains', () => {
    // 600 gpm takes less time to fill the hose; the whole stands before the tank is full and the reserve reached.
    const early = evaluatePlan(at({ start_s: 0 }, { 'plan.legNotes.4.travel_s': 0, 'plan.dumpSites.0.pumpSetUp_s': 1200 }), { quick: true })
    const without = evaluatePlan(smallBundle({ 'plan.dumpSites.0.pumpSetUp_s': 1200 }), { quick: true })
    expect(early.lays![0]!.ready_s).toBeLessThan(early.supplyReady_s!)
    expect(early.sustainable_gpm! - without.sustainable_gpm!).toBeCloseTo(200, -1)
    expect(early.laterFlows).toBeUndefined()
  })

  test('that comes later leaves the headline to the shuttle and raises the flow from then on', () => {
    const late = evaluatePlan(at({ start_s: 3600 }), { quick: true })
    expect(late.sustainable_gpm!).toBeCloseTo(alone.sustainable_gpm!, 6)
    expect(late.laterFlows).toHaveLength(1)
    expect(late.laterFlows![0]!.from_s).toBe(late.lays![0]!.ready_s)
    expect(late.laterFlows![0]!.flow_gpm - alone.sustainable_gpm!).toBeGreaterThan(195)
    expect(late.laterFlows![0]!.flow_gpm - alone.sustainable_gpm!).toBeLessThan(215)
    expect(late.laterFlows![0]!.layIds).toEqual(['lay1'])
  })

  test('into the dump site’s tanks counts beside the haul, and its water is in the balance', () => {
    const fed = evaluatePlan(at({ toId: 'du1', start_s: 3600 }), { quick: true })
    // Less than its 200 gpm: in a tank of 3,000 gal tenders wait longer beside it, and the larger flow keeps a larger reserve.
    expect(fed.laterFlows![0]!.flow_gpm - alone.sustainable_gpm!).toBeGreaterThan(170)
    expect(fed.laterFlows![0]!.flow_gpm - alone.sustainable_gpm!).toBeLessThan(210)
    expect(Math.abs(fed.waterBalance_gal!.error_gal)).toBeLessThan(1e-6)
    expect(fed.lays![0]!.fed_gal!).toBeGreaterThan(0)
  })

  test('as the whole supply of a fill site: the bays share its flow, ready with it, from its source', () => {
    const compiled = compilePlan(at({ toId: 'f1' }, { 'plan.fillSites.0.pumperId': undefined, 'plan.fillSites.0.draftSiteId': undefined, 'plan.fillSites.0.bayCount': 2 }))
    const [fill] = compiled.fills
    expect(fill!.bayRate_gpm[0]).toBeCloseTo(200, 6)
    expect(fill!.bayRate_gpm[1]).toBeCloseTo(100, 6)
    expect(fill!.ready_s).toBeGreaterThanOrEqual(compiled.lays[0]!.ready_s)
    expect(fill!.source?.id).toBe('so2')
    expect(compiled.spec?.feeds).toBeUndefined()
  })

  test('as the whole supply of a fill site that opens after the tank is full: the headline waits on stored loads, the haul comes later', () => {
    const late = evaluatePlan(at({ toId: 'f1', start_s: 3600 }, { 'plan.fillSites.0.pumperId': undefined, 'plan.fillSites.0.draftSiteId': undefined }), { quick: true })
    expect(late.laterFlows).toHaveLength(1)
    expect(late.laterFlows![0]!.from_s).toBeGreaterThan(late.lays![0]!.ready_s)
    expect(late.laterFlows![0]!.flow_gpm).toBeGreaterThan(1.5 * late.sustainable_gpm!)
    // No more than the lay brings.
    expect(late.laterFlows![0]!.flow_gpm).toBeLessThanOrEqual(200)
  })

  test('at a fill site with its own pumper adds to what that gives', () => {
    const { spec } = compilePlan(at({ toId: 'f1' }))
    expect(spec?.feeds).toMatchObject([{ id: 'lay1', fillIndex: 0, flow_gpm: 200 }])
  })

  test('left out, or with a pumper that stands elsewhere in the plan too, changes nothing', () => {
    expect(evaluatePlan(at({ isLeftOut: true }), { quick: true })).toEqual(evaluatePlan(smallBundle({ 'district.apparatus.4': p3 }), { quick: true }))
    const twice = evaluatePlan(at({ pumperIds: ['p1'] }), { quick: true })
    expect(twice.sustainable_gpm!).toBeCloseTo(alone.sustainable_gpm!, 6)
    expect(twice.issues.map(({ code }) => code)).toEqual(expect.arrayContaining(['lay-not-counted', 'lay-pumper-elsewhere']))
  })

  test('a lake beyond the reach of anyone: a hill too high for the pump is not counted, and the answer stands', () => {
    const hill = evaluatePlan(at({ rise_ft: 900 }), { quick: true })
    expect(hill.lays).toBeUndefined()
    expect(hill.sustainable_gpm!).toBeCloseTo(alone.sustainable_gpm!, 6)
    expect(hill.issues.map(({ code }) => code)).toContain('lay-not-counted')
  })

  test('the heights that come with the bundle count, until the way is another', () => {
    const bundle = at({ rise_ft: undefined, wanted_gpm: undefined })
    const flowOf = (rise_ft: number, key = layHeightsKey(bundle.district, bundle.plan.hoseLays![0]!)) => compilePlan({
      ...bundle, layHeights: [{ key, points: [{ distance_ft: 0, height_ft: 500, doubt_ft: 0 }, { distance_ft: 1459, height_ft: 500 + rise_ft, doubt_ft: 0 }] }],
    }).lays[0]!.flow_gpm
    expect(flowOf(250)).toBeLessThan(flowOf(0) - 50)
    expect(flowOf(250, 'another')).toBe(flowOf(0, 'another'))
  })

  test('its flow and times have a working', () => {
    const bundle = at({})
    const working = explain(bundle, 'lay/lay1/flow_gpm')
    expect(working?.value).toBe(evaluatePlan(bundle, { quick: true }).lays![0]!.flow_gpm)
    expect(explain(bundle, 'sustainable_gpm')?.inputs.map(({ symbol }) => symbol)).toContain('layFlow_gpm')
  })

  test('a tenth more of it is one of the links', () => {
    expect(evaluatePlan(at({ start_s: 0 }, { 'plan.legNotes.4.travel_s': 0, 'plan.dumpSites.0.pumpSetUp_s': 1200 })).links.find(({ kind }) => kind === 'hoseLay')!.gain_gpm).toBeGreaterThan(10)
  })
})
