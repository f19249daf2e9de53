import { describe, expect, test } from 'vitest'
import { estimateNow, readLog, type LogWorld } from '@/lib/field-log'
import type { SiteEvent } from '@/lib/plan'
import { sayIssue } from '@/app/_text'
import { nightOf, nightWorld } from './night'
import { DAY_MS, event, uuid } from './site-events'

const world: LogWorld = {
  ...nightWorld,
  units: [0, 1, 2, 3].map((i) => ({ id: `T${i}`, name: `Tender ${i}`, isTender: true })),
  sites: [{ id: 'D', name: 'Barn', kind: 'dump' }, { id: 'F', name: 'Mill pond', kind: 'fill' }],
  load_gal: () => 1800,
  capacity_gal: (id) => (id === 'D' ? 3000 : undefined),
  dump_s: () => 120,
  demand: [{ from_s: 0, flow_gpm: 500 }],
}
const codes = (events: readonly SiteEvent[]) => readLog(events, world).issues.map(({ code }) => code)
const at = (at_s: number, events: readonly SiteEvent[]) => estimateNow(readLog(events, world).events, world, DAY_MS + at_s * 1000, DAY_MS)
const flow = (number: number, at_s: number, value: number) => event(number, at_s, { kind: 'flow', value, apparatusId: undefined, post: { kind: 'attack' } })

describe('a log that is read', () => {
  test('without faults has nothing to say', () => {
    expect(codes(nightOf({ seed: 1, tenderCount: 2, roundCount: 4, ahead_s: 0, jitterShare: 0.1, dropShare: 0 }))).toEqual([])
  })

  test('counts a thing noted twice once, and says so', () => {
    const read = readLog([event(1, 0), event(2, 12, { device: 'phone-b' }), event(3, 400)], world)
    expect(read.events).toHaveLength(2)
    expect(read.issues.find(({ code }) => code === 'log-doubled')?.values.doubleCount).toBe(1)
  })

  test('says which clock was laid on which, in one sentence', () => {
    const { issues } = readLog(nightOf({ seed: 8, tenderCount: 3, roundCount: 7, ahead_s: 480, jitterShare: 0.1, dropShare: 0.1 }), world)
    const shifted = issues.find(({ code }) => code === 'log-clock-shifted')!
    expect(sayIssue(shifted, () => undefined, 'us')).toMatch(/^The clock of device phone-[FD] was .+ (ahead|behind), give or take .+ laid on the clock of the others \(found from tenders going both ways\)\.$/)
  })

  test('names steps out of order, two places at once, a trip that is too quick and a level above the lip', () => {
    expect(codes([event(1, 0), event(2, 60, { kind: 'empty' }), event(3, 120, { kind: 'dumping' })])).toEqual(['log-out-of-order'])
    expect(codes([event(1, 0, { kind: 'dumping' }), event(2, 60, { kind: 'filling', post: { kind: 'fill', siteId: 'F' } })])).toEqual(['log-two-places'])
    expect(codes([event(1, 0, { kind: 'left' }), event(2, 60, { post: { kind: 'fill', siteId: 'F' } })])).toEqual(['log-too-fast'])
    expect(codes([event(1, 0, { kind: 'tankLevel', value: 4000, apparatusId: undefined })])).toEqual(['log-above-capacity'])
    expect(codes([event(1, 0, { apparatusId: 'T9', post: { kind: 'dump', siteId: 'X' } })])).toEqual(['log-unknown-unit', 'log-unknown-site'])
  })
})

describe('what can be told while it runs', () => {
  test('a level that was just read is that level, and lasts at the flow that was read', () => {
    const { tanks: [tank] } = at(600, [event(1, 600, { kind: 'tankLevel', value: 2000, apparatusId: undefined }), flow(2, 590, 400)])
    expect(tank).toMatchObject({ siteId: 'D', level: { value: 2000 }, capacity_gal: 3000 })
    // 2,000 gal at 400 gpm are five minutes.
    expect(tank!.lasts!.value).toBeCloseTo(300, 6)
    expect(tank!.level!.doubt).toBeCloseTo(150, 0)
  })

  test('since the reading it falls by what is drawn and rises by what is dumped, with more doubt', () => {
    const events = [event(1, 0, { kind: 'tankLevel', value: 2000, apparatusId: undefined }), flow(2, 0, 400), event(3, 30), event(4, 60, { kind: 'dumping' }), event(5, 180, { kind: 'empty' })]
    const { tanks: [tank] } = at(240, events)
    // 2,000 − 4 min · 400 gpm + 1,800 gal, by hand.
    expect(tank!.level!.value).toBeCloseTo(2200, 6)
    expect(tank!.level!.doubt).toBeGreaterThan(150)
    const { tanks: [half] } = at(120, events.slice(0, 4))
    // Half of the load has run out after half of its time.
    expect(half!.level!.value).toBeCloseTo(2000 - 800 + 900, 6)
  })

  test('nothing is told of a tank that nobody has read and no load was dumped into, however long the attack may have drawn', () => {
    const { tanks: [tank] } = at(900, [event(1, 0)])
    expect(tank).toEqual({ siteId: 'D', capacity_gal: 3000, loadCount: 0 })
    // A load makes it an estimate, and is not taken for a reading.
    const { tanks: [loaded] } = at(180, [event(1, 0), event(2, 60, { kind: 'dumping' }), event(3, 180, { kind: 'empty' })])
    // Drawn on since it began to dump: two minutes at the 500 gpm asked for.
    expect(loaded!.level!.value).toBeCloseTo(1800 - 2 * 500, 6)
    expect(loaded!.readAt_ms).toBeUndefined()
  })

  test('what ran short before a load came is not taken from that load', () => {
    // Ten minutes at 400 gpm draw 2,000 gal and no more; the load then stands, less what is drawn while it dumps and after.
    const events = [event(1, 0, { kind: 'tankLevel', value: 2000, apparatusId: undefined }), flow(2, 0, 400), event(3, 600, { kind: 'dumping' }), event(4, 720, { kind: 'empty' })]
    expect(at(600, events).tanks[0]!.level!.value).toBe(0)
    expect(at(780, events).tanks[0]!.level!.value).toBeCloseTo(1800 - 3 * 400, 6)
  })

  test('is never below nothing nor above the lip', () => {
    expect(at(3600, [event(1, 0, { kind: 'tankLevel', value: 2000, apparatusId: undefined }), flow(2, 0, 900)]).tanks[0]!.level!.value).toBe(0)
    expect(at(200, [event(1, 0, { kind: 'tankLevel', value: 2900, apparatusId: undefined }), flow(2, 0, 1), event(3, 20, { kind: 'dumping' }), event(4, 150, { kind: 'empty' })]).tanks[0]!.level!.value).toBe(3000)
  })

  test('without any flow read it counts on the flow asked for, with much doubt', () => {
    const read = at(240, [event(1, 0, { kind: 'tankLevel', value: 3000, apparatusId: undefined }), flow(2, 0, 500)]).tanks[0]!
    const asked = at(240, [event(1, 0, { kind: 'tankLevel', value: 3000, apparatusId: undefined })]).tanks[0]!
    expect(asked.level!.value).toBeCloseTo(read.level!.value, 6)
    expect(asked.level!.doubt).toBeGreaterThan(2 * read.level!.doubt)
  })

  test('a tender on the road is expected after the planned trip, and overdue long after it', () => {
    const left = event(1, 0, { kind: 'left', post: { kind: 'fill', siteId: 'F' } })
    expect(at(60, [left]).road).toEqual([{ apparatusId: 'T1', fromSiteId: 'F', toSiteId: 'D', left_ms: DAY_MS, expected_ms: DAY_MS + 420_000, doubt_s: 0.3 * 420 + 30, isOverdue: false }])
    expect(at(900, [left]).road[0]!.isOverdue).toBe(true)
    expect(at(500, [left, event(2, 430)])).toMatchObject({ road: [], posts: [{ apparatusId: 'T1', siteId: 'D' }] })
  })

  test('the flow of the last ten minutes is the average of what was read, each reading held to the next', () => {
    // 5 min at 300 and 5 min at 500 gpm.
    expect(at(1200, [flow(1, 0, 300), flow(2, 900, 500)]).flow).toMatchObject({ basis: 'readings', flow_gpm: 400, over_s: 600 })
    // One read four minutes ago says nothing of the time before.
    expect(at(1200, [flow(1, 960, 450)]).flow).toMatchObject({ flow_gpm: 450, over_s: 240 })
  })

  test('without readings it is what was dumped in ten minutes, give or take a load', () => {
    const dumped = [event(1, 700, { kind: 'empty' }), event(2, 1100, { kind: 'empty', apparatusId: 'T2' })]
    const { flow: found } = at(1200, dumped)
    expect(found).toMatchObject({ basis: 'loads', flow_gpm: 360 })
    expect(found.basis === 'loads' && found.doubt_gpm).toBeGreaterThanOrEqual(180)
    expect(at(5000, dumped).flow).toEqual({ basis: 'none' })
  })

  test('what was undone does not count', () => {
    const events = [event(1, 0, { kind: 'tankLevel', value: 2000, apparatusId: undefined }), flow(2, 0, 0.001), event(3, 10, { kind: 'empty' }), event(4, 11, { kind: 'empty', retracts: uuid(3) })]
    expect(at(60, events).tanks[0]!.level!.value).toBeCloseTo(2000, 0)
  })
})
