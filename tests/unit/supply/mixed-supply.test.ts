import { describe, expect, test } from 'vitest'
import { answerLines } from '@/app/_text'
import { compilePlan, evaluatePlan, explain, isLoss, layHeightsKey, type SupplyResult } from '@/lib/supply'
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

  describe('whose hose is not there', () => {
    const hose = (...lengths_ft: readonly number[]) => ({ 'district.equipment': [
      { id: 'e1', name: 'Portable tank', kind: 'portableTank', capacity_gal: 3000 },
      ...lengths_ft.map((length_ft, i) => ({ id: `hose${i}`, name: 'LDH', kind: 'hose', size_in: 5, length_ft })),
    ] })
    const names = (id: string) => (id === 'lay1' ? 'Brook line' : id === 'lay2' ? 'Second line' : id)
    const cautions = (result: SupplyResult) => answerLines(result, names, 'us').filter(({ look }) => look === 'amber').map(({ text }) => text.replaceAll('\u00a0', ' '))
    const two = (...lengths_ft: readonly number[]) => {
      const first = at({}).plan.hoseLays![0]!
      return at({}, {
        ...hose(...lengths_ft), 'district.apparatus.5': { ...p3, id: 'p4', name: 'Engine 4' },
        'plan.hoseLays': [first, { ...first, id: 'lay2', name: 'Second line', toId: 'du1', pumperIds: ['p4'], stretches: [{ id: 's2', size_in: 5, length_ft: 800 }] }],
        'plan.legNotes.5': { id: 'l6', fromId: 'st1', toId: 'lay2', distance_mi: 3, travel_s: 300 },
      })
    }

    test('brings nothing, and the headline says what is missing where', () => {
      const short = evaluatePlan(at({ start_s: 3600 }, hose(500, 300)), { quick: true })
      expect(short.lays).toBeUndefined()
      expect(short.laterFlows).toBeUndefined()
      expect(short.sustainable_gpm!).toBeCloseTo(alone.sustainable_gpm!, 6)
      expect(cautions(short)).toContain('Brook line cannot be laid and brings nothing: it needs 1,000 ft of 5 in hose; the district lists 800 ft.')
      expect(evaluatePlan(at({ start_s: 3600 }, hose(500, 500)), { quick: true }).lays).toHaveLength(1)
    })

    test('and whose pumper stands elsewhere too says both', () => {
      const both = cautions(evaluatePlan(at({ pumperIds: ['p1'] }, hose(800)), { quick: true }))
      expect(both.filter((text) => /cannot do both at once|cannot be laid/.test(text))).toHaveLength(2)
    })

    test('of another size is no hose for it', () => {
      const other = evaluatePlan(at({}, { 'district.equipment.1': { id: 'h4', name: 'LDH', kind: 'hose', size_in: 4, length_ft: 5000 } }), { quick: true })
      expect(cautions(other)).toContain('Brook line cannot be laid and brings nothing: it needs 1,000 ft of 5 in hose; the district lists 0 ft.')
    })

    test('counts where the district lists no hose at all, and the headline says that nobody has checked', () => {
      const unlisted = evaluatePlan(at({}), { quick: true })
      expect(unlisted.lays).toHaveLength(1)
      expect(cautions(unlisted)).toContain('Brook line needs 1,000 ft of 5 in hose; the district lists no hose at all, so nobody has checked that it is there.')
    })

    test('because a lay before it in the plan has taken it: the order of the plan decides', () => {
      const shared = evaluatePlan(two(1500), { quick: true })
      expect(shared.lays!.map(({ id }) => id)).toEqual(['lay1'])
      expect(cautions(shared)).toContain('Second line cannot be laid and brings nothing: it needs 800 ft of 5 in hose; of the 1,500 ft that the district lists, lays before it in the plan take 1,000 ft (Brook line first).')
      expect(evaluatePlan(two(1800), { quick: true }).lays!.map(({ id }) => id)).toEqual(['lay1', 'lay2'])
    })

    test('leaves what there is to the next lay, and so does one that is left out', () => {
      expect(evaluatePlan(two(900), { quick: true }).lays!.map(({ id }) => id)).toEqual(['lay2'])
      const bundle = two(1500)
      const leftOut = { ...bundle, plan: { ...bundle.plan, hoseLays: bundle.plan.hoseLays!.map((lay) => (lay.id === 'lay1' ? { ...lay, isLeftOut: true } : lay)) } }
      expect(evaluatePlan(leftOut, { quick: true }).lays!.map(({ id }) => id)).toEqual(['lay2'])
    })

    test('leaves its fill site without supply: no answer, and both reasons are said', () => {
      const dry = evaluatePlan(at({ toId: 'f1' }, { 'plan.fillSites.0.pumperId': undefined, 'plan.fillSites.0.draftSiteId': undefined, ...hose(800) }), { quick: true })
      expect(dry.sustainable_gpm).toBeNull()
      expect(cautions(dry).filter((text) => text.startsWith('Brook line cannot be laid'))).toHaveLength(1)
    })
  })

  test('near cavitation at its source is said in the headline', () => {
    const high = evaluatePlan(at({ lift_ft: 21, wanted_gpm: 500 }), { quick: true })
    expect(answerLines(high, (id) => (id === 'lay1' ? 'Brook line' : id), 'us').filter(({ look, text }) => look === 'amber' && /^Brook line: the gauge would read .*near cavitation/.test(text))).toHaveLength(1)
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

  test('waits for the people who lay it; too few are said', () => {
    // Engine 3 brings its operator and five, of the six who lay: the sixth comes on a tender of 4, whose driver stays.
    const crew = (lay: number, tender: number) => ({
      'district.apparatus.0.crewCount': 4, 'district.apparatus.1.crewCount': 4, 'district.apparatus.2.crewCount': tender, 'district.apparatus.3.crewCount': tender,
      'district.apparatus.4': { ...p3, crewCount: lay }, 'plan.tenders.0.delay_s': 900, 'plan.tenders.1.delay_s': 900,
    })
    const startOf = (lay: number, tender: number) => compilePlan(at({ crewCount: 6 }, crew(lay, tender)))
    expect(startOf(7, 1).lays[0]!.start_s).toBe(420)
    expect(startOf(6, 4).lays[0]!.start_s).toBeGreaterThan(420 + 600)
    const few = startOf(3, 1)
    expect(few.issues.find(({ code }) => code === 'staff-short-lay')).toMatchObject({ subjectIds: ['lay1'], values: { needCount: 6, haveCount: 2 } })
    expect(few.lays[0]!.ready_s - few.lays[0]!.start_s).toBeCloseTo(few.lays[0]!.setUp_s, 6)
  })

  test('its pumpers’ fuel is looked at', () => {
    const long = evaluatePlan(at({}, { 'plan.duration_s': 6 * 3600, 'district.apparatus.4': { ...p3, fuel_s: 2 * 3600 } }), { quick: true })
    expect(long.issues.filter(({ code }) => code === 'fuel-runs-out').flatMap(({ subjectIds }) => subjectIds)).toContain('p3')
  })
})

describe('water that a lay and a fill site share', () => {
  const pond = { 'district.sources.0.usable_gal': 20_000, 'district.sources.0.inflow_gpm': 0 }
  // From the mill pond, where tenders fill too.
  const both = (water: Readonly<Record<string, unknown>> = pond, changes: object = {}) => at({ fromId: 'ds1', points: [{ lat: 45.02, lon: -40 }, { lat: 45.017, lon: -40 }], start_s: 0, ...changes }, water)
  const drawn = (result: SupplyResult) => result.waterBalance_gal!.drawn_gal

  test('is counted once: together they draw no more than it holds, and the plan says who shares it', () => {
    const result = evaluatePlan(both(), { quick: true })
    expect(drawn(result)).toBeGreaterThan(0.9 * 20_000)
    expect(drawn(result)).toBeLessThanOrEqual(20_000 + 1e-6)
    expect(result.issues.find(({ code }) => code === 'source-shared')).toMatchObject({ severity: 'note', subjectIds: ['f1', 'lay1'], values: { source: 'so1' } })
    const { spec } = compilePlan(both())
    expect([spec!.fills[0]!.sourceId, spec!.feeds![0]!.sourceId]).toEqual(['so1', 'so1'])
  })

  test('when it is used up the lay says so, as water that is not there', () => {
    const result = evaluatePlan(both(), { quick: true })
    const empty = result.issues.find(({ code }) => code === 'lay-source-empty')!
    // 20,000 gal at 200 gpm last 100 min; tenders draw on it too.
    expect(empty.values['from_s']).toBeLessThan(result.lays![0]!.ready_s + 6000)
    expect(empty.values['left_gpm']).toBe(0)
    expect(isLoss(empty)).toBe(true)
  })

  test('of a stream each has its part once more is asked than it brings', () => {
    const stream = evaluatePlan(both({ 'district.sources.0.kind': 'stream', 'district.sources.0.inflow_gpm': 300 }), { quick: true })
    const empty = stream.issues.find(({ code }) => code === 'lay-source-empty')!
    const { spec } = compilePlan(both({ 'district.sources.0.kind': 'stream', 'district.sources.0.inflow_gpm': 300 }))
    expect(empty.values['left_gpm']).toBeCloseTo((300 * 200) / (200 + spec!.fills[0]!.bayRate_gpm[0]!), 6)
    expect(stream.chain[0]!.capacity_gpm).toBeCloseTo(300, 6)
  })

  test('that nobody has measured is one warning', () => {
    const unknown = evaluatePlan(both({}), { quick: true })
    expect(unknown.issues.filter(({ code }) => code === 'source-volume-unknown')).toHaveLength(1)
    expect(unknown.issues.map(({ code }) => code)).not.toContain('source-shared')
  })

  test('of two fill sites is counted once too', () => {
    const two = evaluatePlan(smallBundle({
      ...pond, 'plan.fillSites.1': { id: 'f2', name: 'Second fill', point: { lat: 45.02, lon: -40.0 }, sourceId: 'so1', rate_gpm: 800 }, 'plan.tenders.1.fillSiteId': 'f2',
      'plan.legNotes.4': { id: 'l5', fromId: 'du1', toId: 'f2', distance_mi: 2 },
    }), { quick: true })
    expect(drawn(two)).toBeLessThanOrEqual(20_000 + 1e-6)
  })

  test('is a tenth more for all of them when the links are tried', () => {
    const trials = evaluatePlan(both()).links.filter(({ kind }) => kind === 'source')
    expect(trials.map(({ subjectId }) => subjectId)).toEqual(['f1'])
  })
})
