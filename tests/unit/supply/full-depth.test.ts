import { describe, expect, test } from 'vitest'
import { compilePlan, evaluatePlan, type FillSiteResult } from '@/lib/supply'
import { compileShuttle, runShuttle } from '@/lib/shuttle'
import { smallBundle } from '../../fixtures/bundle'

const specOf = (changes: Readonly<Record<string, unknown>> = {}) => {
  const { spec, issues } = compilePlan(smallBundle(changes))
  if (!spec) throw new Error(JSON.stringify(issues))
  return spec
}
const codesOf = (changes: Readonly<Record<string, unknown>>) => compilePlan(smallBundle(changes)).issues.map(({ code }) => code)
const tank = (id: string) => ({ id, name: id, kind: 'portableTank', capacity_gal: 3000 })

describe('dump ways', () => {
  const time_min = ({ usable_gal, dumpRate_gpm }: { usable_gal: number; dumpRate_gpm: readonly number[] }) =>
    dumpRate_gpm.reduce((sum, rate) => sum + usable_gal / dumpRate_gpm.length / rate, 0)

  test('an opening makes the rate fall and leaves the average as it is known', () => {
    const [tender] = specOf({ 'district.apparatus.2.dumpOpening_in': 10, 'district.apparatus.2.dump_gpm': 1200 }).tenders
    expect(tender!.dumpRate_gpm[0]).toBeGreaterThan(tender!.dumpRate_gpm[7]!)
    expect(tender!.usable_gal / time_min(tender!)).toBeCloseTo(1200, 6)
  })

  test('an opening that lets less through than the standard asks counts as what it is', () => {
    const [tender] = specOf({ 'district.apparatus.2.dumpOpening_in': 4.5 }).tenders
    expect(tender!.usable_gal / time_min(tender!)).toBeLessThan(600)
  })

  test('backing in gives by the rear valve, driving through by the side', () => {
    const rates = { 'district.apparatus.2.dumpRear_gpm': 1500, 'district.apparatus.2.dumpSide_gpm': 700 }
    expect(specOf(rates).tenders[0]!.dumpRate_gpm).toEqual([1500])
    expect(specOf({ ...rates, 'plan.dumpSites.0.manner': 'driveThrough' }).tenders[0]!.dumpRate_gpm).toEqual([700])
  })

  test('vents cap a jet, a pump gives its own', () => {
    expect(specOf({ 'district.apparatus.2.dumpBy': 'jet', 'district.apparatus.2.dumpCap_gpm': 1200 }).tenders[0]!.dumpRate_gpm).toEqual([1200])
    expect(specOf({ 'district.apparatus.2.dumpBy': 'pump', 'district.apparatus.2.pump_gpm': 350 }).tenders[0]!.dumpRate_gpm).toEqual([350])
  })
})

describe('bays', () => {
  const two = { 'plan.fillSites.0.bayCount': 2 }

  test('connect two, fill one: one bay flows', () => {
    expect(specOf(two).fills[0]!.flowingBayCount).toBeUndefined()
    expect(specOf({ ...two, 'plan.fillSites.0.bayOrder': 'oneAtATime' }).fills[0]!.flowingBayCount).toBe(1)
  })

  test('both orders are figured, each as the plan gives it when it is chosen', () => {
    const orders = (bayOrder?: string) => {
      const site = evaluatePlan(smallBundle({ ...two, ...(bayOrder && { 'plan.fillSites.0.bayOrder': bayOrder }) })).sites[0] as FillSiteResult
      return site.bayOrders
    }
    const together = orders()
    expect(together).not.toBeNull()
    expect(orders('oneAtATime')).toEqual(together)
    expect((evaluatePlan(smallBundle()).sites[0] as FillSiteResult).bayOrders).toBeNull()
  })

  test('two lines into two inlets fill faster and take longer to hook up', () => {
    const line = { 'plan.fillSites.0.fillLine': { size_in: 2.5, length_ft: 200, lineCount: 2 }, 'district.apparatus.2.fillLimit_gpm': 2000, 'district.apparatus.3.fillLimit_gpm': 2000 }
    const inlets = { 'district.apparatus.2.fillInletCount': 2, 'district.apparatus.3.fillInletCount': 2 }
    expect(specOf({ ...line, ...inlets }).fills[0]!.bayRate_gpm[0]).toBeGreaterThan(specOf(line).fills[0]!.bayRate_gpm[0]!)
    expect(specOf({ ...line, ...inlets }).tenders[0]!.fillPosition_s - specOf(line).tenders[0]!.fillPosition_s).toBe(20)
  })
})

describe('people', () => {
  const crew = (pumper: number, tender: number) => ({
    'district.apparatus.0.crewCount': pumper, 'district.apparatus.1.crewCount': 4, 'district.apparatus.2.crewCount': tender, 'district.apparatus.3.crewCount': tender,
  })

  test('nobody is counted where no crew is known', () => {
    expect(codesOf({}).filter((code) => code.startsWith('staff'))).toEqual([])
    expect(specOf({ 'plan.tenders.0.delay_s': 1 }).fills[0]!.ready_s).toBe(specOf().fills[0]!.ready_s)
  })

  test('a site waits for its people', () => {
    // Engine 1 brings its operator and three: the fill site is ready as without counting.
    const full = specOf(crew(4, 4))
    expect(full.fills[0]!.ready_s).toBe(specOf().fills[0]!.ready_s)
    // With two fewer it waits for those who ride on with the tenders.
    expect(specOf(crew(2, 4)).fills[0]!.ready_s).toBeGreaterThan(full.fills[0]!.ready_s)
  })

  test('too few people close places and say so', () => {
    const changes = { ...crew(4, 1), 'plan.dumpSites.0.positionCount': 3, 'plan.fillSites.0.bayCount': 2 }
    const { dumps, fills } = specOf(changes)
    expect(dumps[0]!.positionCount).toBe(1)
    expect(fills[0]!.bayCount).toBe(1)
    expect(codesOf(changes)).toEqual(expect.arrayContaining(['staff-short', 'staff-short-command']))
  })

  test('a further position opens with the tender that brings its people', () => {
    const { dumps } = specOf({ ...crew(4, 4), 'plan.dumpSites.0.positionCount': 2, 'plan.tenders.1.delay_s': 900 })
    expect(dumps[0]!.positionCount).toBe(2)
    expect(dumps[0]!.positionAfter_s![1]).toBeGreaterThan(500)
  })
})

describe('a tender that chooses', () => {
  const second = { id: 'f2', name: 'River fill', point: { lat: 45.02, lon: -40.01 }, rate_gpm: 800 }
  const plan = (chooses: boolean) => ({
    'plan.fillSites.1': second, 'plan.tenders.0.choosesFill': chooses || undefined,
    'plan.legNotes.4': { id: 'l5', fromId: 'du1', toId: 'f2', distance_mi: 2.1 },
  })

  test('has a way to every site, its own first', () => {
    expect(specOf(plan(false)).tenders[0]!.ways).toBeUndefined()
    const ways = specOf(plan(true)).tenders[0]!.ways!
    expect(ways.map(({ fillIndex, dumpIndex }) => [dumpIndex, fillIndex])).toEqual([[0, 0], [0, 1]])
    expect(ways[1]!.toFill_s).toBeGreaterThan(ways[0]!.toFill_s)
  })
})

describe('tanks', () => {
  const chained = { 'district.equipment': [tank('e1'), tank('e2')], 'plan.dumpSites.0.portableTankIds': ['e1', 'e2'] }

  test('joined by their drains stand at one level', () => {
    const [dump] = specOf(chained).dumps
    expect(dump!.capacity_gal).toBeCloseTo(6000, 6)
    expect(dump!.front).toBeUndefined()
  })

  test('joined by a jet siphon: the drive water is the pumper’s, and no siphon counts for more than the handbook says', () => {
    const siphon = { ...chained, 'plan.dumpSites.0.tankLink': 'jetSiphon' }
    const [dump] = specOf(siphon).dumps
    expect(dump!.capacity_gal).toBeCloseTo(3000, 6)
    expect(dump!.front!.capacity_gal).toBeCloseTo(3000, 6)
    expect(dump!.front!.transfer_gpm).toBeLessThanOrEqual(500)
    const plain = compilePlan(smallBundle(chained)).dumps[0]!.pump_gpm
    const driven = compilePlan(smallBundle(siphon)).dumps[0]!.pump_gpm
    expect(plain - driven).toBeGreaterThan(100)
    expect(plain - driven).toBeLessThan(200)
    expect(codesOf(siphon)).toContain('siphon-drive-water')
    expect(codesOf({ 'plan.dumpSites.0.tankLink': 'jetSiphon' })).toContain('siphon-without-tanks')
  })

  test('a measured transfer and a leak go through', () => {
    const [dump] = specOf({ ...chained, 'plan.dumpSites.0.tankLink': 'jetSiphon', 'plan.dumpSites.0.transfer_gpm': 620, 'plan.dumpSites.0.leak_gpm': 12 }).dumps
    expect(dump!.front!.transfer_gpm).toBe(620)
    expect(dump!.leak_gpm).toBe(12)
  })

  test('a nurse tender stands full in their place, takes and gives what its inlets and outlet do', () => {
    const apparatus = { id: 't9', name: 'Tender 9', kind: 'tender', stationId: 'st1', tank_gal: 3500 }
    const nursed = { 'district.apparatus.4': apparatus, 'plan.dumpSites.0.nurseId': 't9', 'plan.dumpSites.0.portableTankIds': undefined }
    const [dump] = specOf(nursed).dumps
    expect(dump).toMatchObject({ capacity_gal: 3500, startsFull: true, intakeLimit_gpm: 500, draftLimit: [{ flow_gpm: 0, volume_gal: 0 }, { flow_gpm: 500, volume_gal: 700 }] })
    expect(compilePlan(smallBundle(nursed)).dumps[0]!.pump_gpm).toBeLessThanOrEqual(500)
    const run = runShuttle(compileShuttle(specOf(nursed)))
    expect(Math.abs(run.balance.error_gal)).toBeLessThan(1e-6)
    // It came full: supply is ready as soon as the pumper is.
    expect(run.supplyReady_s).toBeCloseTo(dump!.pumpReady_s, 6)
    expect(codesOf({ 'plan.dumpSites.0.nurseId': 't1' })).toContain('nurse-hauls')
  })
})

describe('the road', () => {
  const lane = { 'plan.oneLanes': [{ id: 'w1', name: 'Mill lane', fillSiteId: 'f1', dumpSiteId: 'du1', pass_s: 60, alongShare: 0.3, passingPlaceCount: 1 }] }

  test('a stretch with one passing place is two pieces, met in opposite order', () => {
    const { lanes, tenders } = specOf(lane)
    expect(lanes).toEqual([{ id: 'w1/1' }, { id: 'w1/2' }])
    const [{ toDump_s, toFill_s, lanesToDump, lanesToFill }] = tenders as [(typeof tenders)[0]]
    expect(lanesToDump!.map(({ laneIndex }) => laneIndex)).toEqual([0, 1])
    expect(lanesToFill!.map(({ laneIndex }) => laneIndex)).toEqual([1, 0])
    expect((lanesToDump![1]!.upToShare - lanesToDump![0]!.fromShare) * Math.min(toDump_s, toFill_s)).toBeCloseTo(60, 6)
    expect((lanesToDump![0]!.fromShare + lanesToDump![1]!.upToShare) / 2).toBeCloseTo(0.3, 9)
  })

  test('a plan with a stretch is simulated, and no better for it', () => {
    const flow = (changes: Readonly<Record<string, unknown>>) => evaluatePlan(smallBundle(changes), { quick: true }).sustainable_gpm!
    expect(flow(lane)).toBeLessThanOrEqual(flow({}) + 0.5)
  })
})

describe('long runs', () => {
  test('drivers rest and fuel is asked after', () => {
    expect(specOf().tenders[0]!.rest).toBeUndefined()
    expect(specOf({ 'plan.duration_s': 6 * 3600 }).tenders[0]!.rest).toEqual({ after_s: 14_400, break_s: 900 })
    expect(codesOf({ 'plan.duration_s': 6 * 3600 })).toContain('fuel-runs-out')
    expect(codesOf({ 'plan.duration_s': 6 * 3600, 'district.apparatus.0.fuel_s': 40_000, 'district.apparatus.1.fuel_s': 40_000 })).not.toContain('fuel-runs-out')
    expect(codesOf({})).not.toContain('fuel-runs-out')
  })

  test('a tender that is withdrawn leaves, one that is delayed comes later', () => {
    const [first, second] = specOf({ 'plan.tenders.0.withdraw_s': 3600, 'plan.tenders.1.delay_s': 600 }).tenders
    expect(first!.withdraw_s).toBe(3600)
    expect(second!.arrive_s! - first!.arrive_s!).toBeCloseTo(600, 6)
  })
})
