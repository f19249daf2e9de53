import { describe, expect, test } from 'vitest'
import { compileShuttle, hauledCapacity, recordShuttle, runShuttle, sustainableFlow, type ShuttleSpec } from '@/lib/shuttle'
import { dumpSite, fillSite, layout, tender } from './layout'

const record = (spec: ShuttleSpec, demand: 'planned' | 'open' | number = 'planned') => recordShuttle(compileShuttle(spec), { demand, afterReady_s: 7200 })
const logOf = (spec: ShuttleSpec, tenderId: string, demand: 'planned' | 'open' | number = 'open') =>
  record(spec, demand).log.filter((event) => event.tenderId === tenderId).map(({ time_s, kind, siteId }) => `${time_s} ${kind} ${siteId ?? ''}`.trim())

describe('bays that take turns', () => {
  const two = (flowingBayCount?: number) => layout({
    fills: [fillSite({ bayCount: 2, bayRate_gpm: [1000, 500], flowingBayCount })],
    tenders: [tender(), tender({ id: 'T2' })],
    dumps: [dumpSite({ positionCount: 2 })],
  })

  test('the second stands hooked up and begins when the first is full', () => {
    const log = logOf(two(1), 'T2')
    // 100 arrive, 130 dump, 190 clear, 220 off, 520 there, 550 hooked up; the first fills until 610.
    expect(log).toContain('550 waits-in-bay fill')
    expect(log).toContain('610 starts-fill fill')
    expect(log).toContain('670 ends-fill fill')
  })

  test('sharing instead, both fill at half the rate', () => {
    expect(logOf(two(), 'T1')).toContain('670 ends-fill fill')
    expect(logOf(two(), 'T2')).toContain('670 ends-fill fill')
    expect(logOf(two(1), 'T1')).toContain('610 ends-fill fill')
  })

  test('the wait in the bay counts as waiting to fill', () => {
    const { tenders } = record(two(1), 'open').run
    expect(tenders[0]!.waitedToFill_s).toBe(0)
    expect(tenders[1]!.waitedToFill_s).toBeGreaterThanOrEqual(60)
  })
})

describe('places that open late', () => {
  test('a second position opens with its people', () => {
    const spec = layout({ dumps: [dumpSite({ positionCount: 2, positionAfter_s: [0, 150] })], tenders: [tender(), tender({ id: 'T2' })] })
    expect(logOf(spec, 'T2')).toContain('150 takes-position dump')
    expect(record(spec, 'open').log).toContainEqual({ time_s: 150, kind: 'position-opens', siteId: 'dump', water_gal: expect.any(Number) as number })
  })

  test('a second bay opens with its people', () => {
    const spec = layout({
      fills: [fillSite({ bayCount: 2, bayRate_gpm: [1000, 1000], bayAfter_s: [0, 560] })], dumps: [dumpSite({ positionCount: 2 })],
      tenders: [tender(), tender({ id: 'T2' })],
    })
    expect(logOf(spec, 'T2')).toContain('560 takes-bay fill')
  })
})

describe('tenders that choose', () => {
  const ways = (far_s: number) => [
    { dumpIndex: 0, fillIndex: 0, toFill_s: 300, toDump_s: 300 },
    { dumpIndex: 0, fillIndex: 1, toFill_s: far_s, toDump_s: far_s },
  ]
  const fills = [fillSite({ id: 'near' }), fillSite({ id: 'far' })]

  test('go to the nearer site while nobody is there', () => {
    expect(logOf(layout({ fills, tenders: [tender({ ways: ways(350) })] }), 'T1')).toContain('520 arrives-at-fill near')
  })

  test('go to the other one where the queue costs more than the road', () => {
    const spec = layout({ fills, dumps: [dumpSite({ positionCount: 4 })], tenders: ['T1', 'T2', 'T3', 'T4'].map((id) => tender({ id, ways: ways(350) })) })
    // All four set off at 220. T1: near, back at 940. T2: near would be free at 640, back 1,060; far: back 1,040.
    // T3: near back 1,060, far 1,160. T4: near back 1,180, far 1,160.
    const sites = ['T1', 'T2', 'T3', 'T4'].map((id) => logOf(spec, id).find((line) => line.includes('arrives-at-fill'))!.split(' ')[2])
    expect(sites).toEqual(['near', 'far', 'near', 'far'])
  })

  test('take the first of equals', () => {
    expect(logOf(layout({ fills, tenders: [tender({ ways: ways(300) })] }), 'T1')).toContain('520 arrives-at-fill near')
  })

  test('bring water to the dump site that has room', () => {
    const both = [
      { dumpIndex: 0, fillIndex: 0, toFill_s: 300, toDump_s: 300 },
      { dumpIndex: 1, fillIndex: 0, toFill_s: 310, toDump_s: 310 },
    ]
    const spec = layout({
      fills: [fillSite({ bayCount: 2, bayRate_gpm: [1000, 1000] })],
      dumps: [dumpSite({ id: 'a', demandShare: 0.5 }), dumpSite({ id: 'b', demandShare: 0.5 })],
      tenders: ['T1', 'T2', 'T3', 'T4'].map((id, i) => tender({ id, arrive_s: 100 + 50 * i, dumpIndex: i % 2, ways: both })),
    })
    const { flow_gpm, haul } = sustainableFlow(compileShuttle(spec), { afterReady_s: 7200 })
    const run = runShuttle(compileShuttle(spec), { demand: flow_gpm })
    expect(flow_gpm).toBeGreaterThan(0.6 * haul.hauledCapacity_gpm)
    expect(run.dumps.every(({ received_gal }) => received_gal > 5000)).toBe(true)
    expect(run.shortSinceReady_s).toBe(0)
  })

  test('relieve a crowded site, and cost little where there is no crowd', () => {
    const haul = (count: number, choice: 'near' | 'far' | 'both') => hauledCapacity(compileShuttle(layout({
      fills,
      tenders: Array.from({ length: count }, (_, i) => tender({
        id: `T${i}`, fillIndex: choice === 'far' ? 1 : 0, toFill_s: choice === 'far' ? 350 : 300, toDump_s: choice === 'far' ? 350 : 300,
        ...(choice === 'both' && { ways: ways(350) }),
      })),
      dumps: [dumpSite({ positionCount: 4 })],
    })), { afterReady_s: 14400 }).hauledCapacity_gpm
    // One bay passes 1,000 gal in 120 s: 500 gpm, so twelve tenders crowd either site.
    expect(haul(12, 'near')).toBeCloseTo(500, 0)
    expect(haul(12, 'both')).toBeGreaterThan(750)
    // Each looks after itself only: up to a hundredth may be lost against the best for all.
    expect(haul(6, 'both')).toBeGreaterThan(0.99 * Math.max(haul(6, 'near'), haul(6, 'far')))
  })
})

describe('tanks in front', () => {
  const chained = (transfer_gpm: number, front_gal = 2000) => layout({
    dumps: [dumpSite({ capacity_gal: 2000, front: { capacity_gal: front_gal, transfer_gpm } })],
    tenders: Array.from({ length: 4 }, (_, i) => tender({ id: `T${i}`, arrive_s: 100 + 60 * i })),
  })

  test('water goes over at the transfer rate', () => {
    const { levels } = record(chained(500), 'open')
    expect(levels[0]!.length).toBeGreaterThan(0)
    const run = runShuttle(compileShuttle(chained(100)), { demand: 0, afterReady_s: 600 })
    // One dump starts at 130 and every later one as soon as it can: until the end the siphon has always water.
    expect(run.dumps[0]!.level_gal).toBeCloseTo((100 * (run.end_s - 130)) / 60, 6)
  })

  test('the flow is no more than goes over', () => {
    const { flow_gpm } = sustainableFlow(compileShuttle(chained(150)), { afterReady_s: 7200 })
    expect(flow_gpm).toBeLessThan(150 + (2000 - 200) / 120 + 1)
    expect(flow_gpm).toBeGreaterThan(100)
    expect(sustainableFlow(compileShuttle(chained(1000)), { afterReady_s: 7200 }).flow_gpm).toBeGreaterThan(flow_gpm)
  })

  test('a full front holds tenders back', () => {
    const run = runShuttle(compileShuttle(chained(50, 1000)), { demand: 40, afterReady_s: 7200 })
    expect(run.dumps[0]!.heldBack_s).toBeGreaterThan(1000)
    expect(run.dumps[0]!.front_gal).toBeLessThanOrEqual(1000)
  })
})

describe('leaks and intakes', () => {
  test('a leak is spilled and nothing else', () => {
    const scenario = compileShuttle(layout({ dumps: [dumpSite({ leak_gpm: 30 })] }))
    const run = runShuttle(scenario, { demand: 50, afterReady_s: 3600 })
    expect(run.balance.spilled_gal).toBeGreaterThan(500)
    expect(Math.abs(run.balance.error_gal)).toBeLessThan(1e-6)
  })

  test('an empty tank leaks no more than runs in', () => {
    const run = runShuttle(compileShuttle(layout({ dumps: [dumpSite({ leak_gpm: 600 })] })), { demand: 0, afterReady_s: 3600 })
    expect(run.balance.spilled_gal).toBeLessThanOrEqual(run.dumps[0]!.received_gal + 1e-6)
  })

  test('a leak takes its gallons off the sustainable flow', () => {
    const at = (leak_gpm: number) => sustainableFlow(compileShuttle(layout({
      dumps: [dumpSite({ leak_gpm })], tenders: ['T1', 'T2', 'T3', 'T4'].map((id, i) => tender({ id, arrive_s: 100 + 210 * i })),
    }))).flow_gpm
    expect(at(0) - at(20)).toBeGreaterThan(19)
    expect(at(0) - at(20)).toBeLessThan(45)
  })

  test('a nurse tender takes what its inlets let in', () => {
    const log = logOf(layout({ dumps: [dumpSite({ intakeLimit_gpm: 500 })] }), 'T1')
    expect(log).toContain('130 starts-dump dump')
    expect(log).toContain('250 ends-dump dump')
  })
})

describe('one-lane stretches', () => {
  const lanes = [{ id: 'lane' }]
  /** Of a way of 300 s the second third. */
  const middle = [{ laneIndex: 0, fromShare: 1 / 3, upToShare: 2 / 3 }]

  test('cost nothing while nobody comes the other way', () => {
    const spec = layout({ lanes, tenders: [tender({ lanesToFill: middle, lanesToDump: middle })] })
    const log = logOf(spec, 'T1')
    expect(log).toContain('320 enters-one-lane lane')
    expect(log).toContain('420 leaves-one-lane lane')
    expect(log).toContain('520 arrives-at-fill fill')
  })

  test('an empty tender waits for the loaded one in the stretch', () => {
    // T1 leaves the fill site full at 640 and is in the stretch from 740 to 840; T2 gets there empty at 800.
    const spec = layout({
      lanes, dumps: [dumpSite({ positionCount: 2 })],
      tenders: [tender({ lanesToFill: middle, lanesToDump: middle }), tender({ id: 'T2', arrive_s: 580, lanesToFill: middle, lanesToDump: middle })],
    })
    expect(logOf(spec, 'T1')).toContain('740 enters-one-lane lane')
    const log = logOf(spec, 'T2')
    expect(log).toContain('800 waits-at-road lane')
    expect(log).toContain('840 enters-one-lane lane')
    expect(log).toContain('1040 arrives-at-fill fill')
    expect(record(spec, 'open').run.tenders[1]!.waitedOnRoad_s).toBeGreaterThanOrEqual(40)
  })

  test('a waiting loaded tender goes before a waiting empty one, and those of one direction together', () => {
    const spec = layout({
      lanes, dumps: [dumpSite({ positionCount: 4 })], fills: [fillSite({ bayCount: 2, bayRate_gpm: [1000, 1000] })],
      tenders: [
        tender({ lanesToFill: middle, lanesToDump: middle }), tender({ id: 'T2', lanesToFill: middle, lanesToDump: middle }),
        tender({ id: 'T3', arrive_s: 510, lanesToFill: middle, lanesToDump: middle }), tender({ id: 'T4', arrive_s: 560, lanesToFill: middle, lanesToDump: middle }),
      ],
    })
    // T3 is in the stretch empty from 730 to 830. T1 and T2 come to it full at 740, T4 empty at 780.
    expect(logOf(spec, 'T1')).toContain('830 enters-one-lane lane')
    expect(logOf(spec, 'T2')).toContain('830 enters-one-lane lane')
    expect(logOf(spec, 'T4')).toContain('930 enters-one-lane lane')
  })
})

describe('breaks', () => {
  test('a driver rests after the dump that ends so long after arrival, out of the position', () => {
    const log = logOf(layout({ tenders: [tender({ rest: { after_s: 900, break_s: 600 } })] }), 'T1')
    // Dumps end at 190 and 1,030: 930 s after arrival. Position clear at 1,060.
    expect(log).toContain('1060 rests dump')
    expect(log).toContain('1660 ends-rest dump')
    expect(log).toContain('1960 arrives-at-fill fill')
  })

  test('cost the haul their time', () => {
    const haul = (rest?: { after_s: number; break_s: number }) => hauledCapacity(compileShuttle(layout({ horizon_s: 60000, tenders: [tender({ rest })] })), { afterReady_s: 50000 }).hauledCapacity_gpm
    expect(haul({ after_s: 7200, break_s: 840 }) / haul()).toBeCloseTo(9 / 10, 1)
  })
})

test('new parts keep the balance at any moment', () => {
  const spec = layout({
    lanes: [{ id: 'lane' }], dumps: [dumpSite({ front: { capacity_gal: 1500, transfer_gpm: 300 }, leak_gpm: 5, intakeLimit_gpm: 800 })],
    tenders: ['T1', 'T2', 'T3'].map((id) => tender({ id, spillShare: 0.02, lanesToFill: [{ laneIndex: 0, fromShare: 0.2, upToShare: 0.4 }], lanesToDump: [{ laneIndex: 0, fromShare: 0.6, upToShare: 0.8 }] })),
  })
  const { run } = record(spec, 200)
  expect(Math.abs(run.balance.error_gal)).toBeLessThan(1e-6)
})
