import { describe, expect, test } from 'vitest'
import { advise, finish, momentsOf, stopsOf, timeToDry_s, type StopOutcome, type StopReport } from '@/lib/advise'
import type { Bundle } from '@/lib/plan'
import type { ShuttleSpec } from '@/lib/shuttle'
import { compilePlan, evaluatePlan } from '@/lib/supply'
import { adviceBundle } from '@/tests/fixtures/advice-bundle'
import { smallBundle } from '@/tests/fixtures/bundle'

const asIs = (bundle: Bundle) => bundle
function stopsFor(bundle: Bundle): StopReport {
  const advice = finish(advise(bundle, asIs))
  if (!advice) throw new Error('the plan has no answer')
  return advice.stops
}
const one = (report: StopReport, id: string): StopOutcome => {
  const found = report.outcomes.find((outcome) => outcome.id === id)
  if (!found) throw new Error(`${id} is missing: ${report.outcomes.map((outcome) => outcome.id).join(', ')}`)
  return found
}

describe('when one part stops', () => {
  const report = stopsFor(adviceBundle())

  test('every pumper, tender and road of the plan is looked at', () => {
    expect(report.outcomes.map(({ id }) => id).sort()).toEqual(['dumpPumper:du1', 'fillPumper:f1', 'road:f1:du1', 'tender:t1', 'tender:t2'])
  })

  test('nothing is left after the only pumper at the water has stopped, but not at once', () => {
    const fill = one(report, 'fillPumper:f1')
    expect(fill.flowAfter_gpm).toBe(0)
    expect(fill.dry_s).toBeGreaterThan(0)
    expect(report.onlyDraftSiteId).toBe('f1')
    expect(fill.spare?.apparatusId).toBe('p3')
  })

  test('the pumper at the only dump site takes the water with it at once', () => {
    expect(one(report, 'dumpPumper:du1')).toMatchObject({ dry_s: 0, flowAfter_gpm: 0 })
  })

  test('without a tender it holds what the plan without that tender holds', () => {
    const alone = adviceBundle(({ plan }) => { plan.tenders = plan.tenders.filter(({ tenderId }) => tenderId !== 't2') })
    expect(one(report, 'tender:t2').flowAfter_gpm).toBeCloseTo(evaluatePlan(alone, { quick: true }).sustainable_gpm ?? 0, 6)
  })

  test('what is lost is counted from what the whole plan holds, whatever is needed', () => {
    const little = stopsFor(adviceBundle(({ district }) => { district.hazards = district.hazards.map((hazard) => ({ ...hazard, needed_gpm: 60 })) as typeof district.hazards }))
    expect(little.flow_gpm).toBe(60)
    expect(little.held_gpm).toBe(evaluatePlan(adviceBundle(), { quick: true }).sustainable_gpm)
    for (const { lost_gpm, flowAfter_gpm } of little.outcomes) expect(lost_gpm).toBe(little.held_gpm - flowAfter_gpm)
  })

  test('the worst comes first', () => {
    expect(report.worst).toBe(report.outcomes[0])
    for (const outcome of report.outcomes) expect(outcome.flowAfter_gpm).toBeGreaterThanOrEqual(report.worst?.flowAfter_gpm ?? 0)
  })

  test('bays and positions are looked at where there is more than one', () => {
    const wide = stopsFor(adviceBundle(({ plan }) => {
      plan.fillSites = plan.fillSites.map((site) => ({ ...site, bayCount: 2 }))
      plan.dumpSites = plan.dumpSites.map((site) => ({ ...site, positionCount: 2 }))
    }))
    const single = evaluatePlan(adviceBundle(({ plan }) => { plan.dumpSites = plan.dumpSites.map((site) => ({ ...site, positionCount: 2 })) }), { quick: true })
    expect(one(wide, 'dumpPosition:du1').values).toEqual({ count: 1 })
    // The rates of the bays that are left are those of that many bays.
    expect(one(wide, 'fillBay:f1').flowAfter_gpm).toBeCloseTo(single.sustainable_gpm ?? 0, 0)
  })

  test('with two dump sites the other goes on with its own tenders', () => {
    const two = adviceBundle(({ plan }) => {
      plan.dumpSites = [...plan.dumpSites, { id: 'du2', name: 'Orchard', point: { lat: 45.001, lon: -40.05 }, tankCapacity_gal: 3000 }] as unknown as typeof plan.dumpSites
      plan.tenders = [{ id: 'k1', tenderId: 't1', dumpSiteId: 'du1' }, { id: 'k2', tenderId: 't2', dumpSiteId: 'du2' }] as unknown as typeof plan.tenders
    })
    const after = one(stopsFor(two), 'dumpPumper:du1')
    expect(after.dry_s).toBe(0)
    expect(after.flowAfter_gpm).toBeGreaterThan(0)
  })
})

describe('minutes until the fire ground is dry', () => {
  const compiled = compilePlan(smallBundle())
  const spec = compiled.spec as ShuttleSpec
  const flow_gpm = 150
  const moments = momentsOf(spec, flow_gpm)
  const stop = stopsOf(smallBundle(), compiled, asIs).find(({ id }) => id === 'fillPumper:f1')!

  // Water that is there when the pumper stops can neither be made nor be lost: it is in the tanks above the draft limit, in
  // the booster tank, aboard tenders. The flow lasts for at least the first two and at most all of it.
  test('lies between what stands in the tanks and all water on this side of the draft', () => {
    const dry_s = timeToDry_s(moments, stop.onward)
    const loads_gal = spec.tenders.reduce((sum, { usable_gal }) => sum + usable_gal, 0)
    const most_gal = spec.dumps[0]!.capacity_gal + spec.dumps[0]!.booster_gal + loads_gal
    const reserve_gal = (spec.demand.reserve_s / 60) * flow_gpm + spec.dumps[0]!.booster_gal
    expect((dry_s! / 60) * flow_gpm).toBeLessThanOrEqual(most_gal)
    expect((dry_s! / 60) * flow_gpm).toBeGreaterThanOrEqual(reserve_gal - 1)
  })

  test('is never where nothing stops', () => {
    expect(timeToDry_s(moments, spec)).toBeUndefined()
  })

  test('a lower flow lasts longer', () => {
    expect(timeToDry_s(momentsOf(spec, 100), stop.onward)!).toBeGreaterThan(timeToDry_s(moments, stop.onward)!)
  })
})

describe('when a pumper of a hose lay stops', () => {
  const spec = { id: 'lay1', name: 'Brook line', fromId: 'so2', toId: 'fireGround', points: [{ lat: 45.004, lon: -40.05 }, { lat: 45, lon: -40.05 }], lift_ft: 5, rise_ft: 0 }
  const withLay = (changes: object = {}, others: Readonly<Record<string, unknown>> = {}) => smallBundle({
    'district.apparatus.4': { id: 'p3', name: 'Engine 3', kind: 'pumper', stationId: 'st1', rated_gpm: 1000 },
    'district.apparatus.5': { id: 'p4', name: 'Engine 4', kind: 'pumper', stationId: 'st1', rated_gpm: 1000 },
    'district.sources.1': { id: 'so2', name: 'Brook', kind: 'lake', point: { lat: 45.004, lon: -40.05 } },
    'plan.hoseLays': [{ ...spec, pumperIds: ['p3', 'p4'], stretches: [{ id: 's1', size_in: 2.5, length_ft: 2500 }], ...changes }],
    'plan.legNotes.4': { id: 'l5', fromId: 'st1', toId: 'lay1', distance_mi: 0.1, travel_s: 10 }, 'plan.dumpSites.0.pumpSetUp_s': 3000,
    ...others,
  })
  const stopsIn = (bundle: Bundle) => stopsOf(bundle, compilePlan(bundle), asIs)

  test('at the source the lay brings nothing; in the line the others bring what they can, and never more than before', () => {
    const bundle = withLay()
    const { lays } = compilePlan(bundle)
    const stops = stopsIn(bundle).filter(({ kind }) => kind === 'layPumper')
    expect(stops.map(({ subjectIds }) => subjectIds)).toEqual([['p3', 'lay1'], ['p4', 'lay1']])
    expect(stops[0]!.after!.feeds).toEqual([])
    const left_gpm = stops[1]!.after!.feeds![0]!.flow_gpm
    expect(left_gpm).toBeGreaterThan(0)
    expect(left_gpm).toBeLessThan(lays[0]!.flow_gpm)
  })

  test('what is left at the fire ground is what the plan holds without the lay', () => {
    const before = evaluatePlan(withLay(), { quick: true }).sustainable_gpm!
    const alone = evaluatePlan(withLay({ isLeftOut: true }), { quick: true }).sustainable_gpm!
    const source = one(stopsFor(withLay()), 'layPumper:lay1:p3')
    expect(before).toBeGreaterThan(alone + 50)
    expect(source.flowAfter_gpm).toBeCloseTo(alone, 6)
  })

  test('that is the whole supply of a fill site, the site gives nothing, and no pumper is made up there', () => {
    const own = withLay({ toId: 'f1', pumperIds: ['p3'] }, { 'plan.fillSites.0.pumperId': undefined, 'plan.fillSites.0.draftSiteId': undefined })
    const stops = stopsIn(own)
    expect(stops.map(({ id }) => id)).not.toContain('fillPumper:f1')
    expect(stops.find(({ id }) => id === 'layPumper:lay1:p3')!.after).toBeUndefined()
  })
})
