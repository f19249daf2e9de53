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
