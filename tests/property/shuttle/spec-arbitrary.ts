import fc from 'fast-check'
import type { LanePass, ShuttleSpec } from '@/lib/shuttle'

const amount = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const maybe = <T>(value: fc.Arbitrary<T>) => fc.option(value, { nil: undefined })

const fill = fc.record({
  ready_s: amount(0, 1500),
  bayRates_gpm: fc.array(amount(100, 1500), { minLength: 1, maxLength: 3 }),
  usable_gal: maybe(amount(0, 60000)),
  inflow_gpm: maybe(amount(0, 400)),
  late_s: maybe(fc.array(amount(0, 2000), { minLength: 3, maxLength: 3 })),
  flowing: maybe(fc.integer({ min: 1, max: 3 })),
})

const dump = fc.record({
  ready_s: amount(0, 900),
  setUp_s: amount(0, 600),
  positionCount: fc.integer({ min: 1, max: 3 }),
  capacity_gal: amount(300, 8000),
  limits: fc.tuple(amount(0, 600), amount(0, 600)),
  reprime_s: amount(0, 180),
  restartMargin_s: maybe(amount(1, 120)),
  booster_gal: amount(0, 1000),
  weight: fc.integer({ min: 0, max: 4 }),
  late_s: maybe(fc.array(amount(0, 2000), { minLength: 3, maxLength: 3 })),
  front: maybe(fc.record({ capacity_gal: amount(100, 6000), transfer_gpm: amount(50, 1500) })),
  intakeLimit_gpm: maybe(amount(100, 1500)),
  leak_gpm: maybe(amount(0, 60)),
  startsFull: maybe(fc.boolean()),
})

const tender = fc.record({
  usable_gal: amount(200, 4000),
  arrive_s: maybe(amount(0, 3000)),
  withdraw_s: maybe(amount(0, 8000)),
  dump: fc.nat(7),
  fill: fc.nat(7),
  toFill_s: amount(0, 1200),
  toDump_s: amount(0, 1200),
  dumpPosition_s: amount(0, 120),
  dumpClear_s: amount(0, 60),
  dumpRate_gpm: fc.array(amount(100, 2500), { minLength: 1, maxLength: 8 }),
  spillShare: maybe(amount(0, 0.3)),
  fillPosition_s: amount(0, 120),
  fillClear_s: amount(0, 60),
  fillLimit_gpm: amount(100, 1500),
  topUpShare: fc.constantFrom(0, 0.1, 0.25, 1),
  topUpRateShare: amount(0.1, 1),
  rest: maybe(fc.record({ after_s: amount(600, 6000), break_s: amount(0, 900) })),
  choices: maybe(fc.array(fc.record({ dump: fc.nat(7), fill: fc.nat(7), toFill_s: amount(0, 1200), toDump_s: amount(0, 1200) }), { maxLength: 4 })),
  stretches: fc.array(fc.record({ lane: fc.nat(7), atShare: amount(0, 1), passShare: amount(0, 1) }), { maxLength: 2 }),
})

const demand = fc.record({
  gaps_s: fc.array(fc.tuple(amount(1, 2500), amount(0, 1500)), { minLength: 0, maxLength: 4 }),
  firstDue: maybe(fc.record({ arrive_s: amount(0, 900), tank_gal: amount(0, 1000) })),
  reserve_s: amount(0, 240),
})

type Stretch = { lane: number; atShare: number; passShare: number }

/** One stretch in each half of the way, met from the other end on the way back. */
const passesOf = (stretches: readonly Stretch[], isBack: boolean): LanePass[] => {
  const there = stretches.map(({ lane, atShare, passShare }, k) => {
    const fromShare = (k + atShare) / 2
    return { laneIndex: lane, fromShare, upToShare: fromShare + passShare * ((k + 1) / 2 - fromShare) }
  })
  return isBack ? there.map(({ laneIndex, fromShare, upToShare }) => ({ laneIndex, fromShare: 1 - upToShare, upToShare: 1 - fromShare })).reverse() : there
}

/** Any layout the shuttle can be asked for, sensible or not, as long as it keeps the contract. */
export const anySpec: fc.Arbitrary<ShuttleSpec> = fc
  .record({
    seed: fc.integer({ min: 0, max: 1e6 }),
    fills: fc.array(fill, { minLength: 1, maxLength: 3 }),
    dumps: fc.array(dump, { minLength: 1, maxLength: 3 }),
    tenders: fc.array(tender, { minLength: 0, maxLength: 9 }),
    laneCount: fc.nat(2),
    demand,
  })
  .map(({ seed, fills, dumps, tenders, laneCount, demand: { gaps_s, firstDue, reserve_s } }) => {
    const weights = dumps.map(({ weight }) => weight)
    const total = weights.reduce((sum, weight) => sum + weight, 0)
    let from_s = 0
    return {
      seed,
      horizon_s: 12000,
      fills: fills.map(({ bayRates_gpm, late_s, flowing, ...rest }, i) => ({
        id: `fill-${i}`, ...rest, bayCount: bayRates_gpm.length, bayRate_gpm: bayRates_gpm,
        ...(late_s && { bayAfter_s: bayRates_gpm.map((_, k) => late_s[k]!) }),
        ...(flowing !== undefined && { flowingBayCount: Math.min(flowing, bayRates_gpm.length) }),
      })),
      dumps: dumps.map(({ ready_s, setUp_s, limits, weight, late_s, ...rest }, i) => ({
        id: `dump-${i}`,
        ...rest,
        ready_s,
        pumpReady_s: ready_s + setUp_s,
        ...(late_s && { positionAfter_s: late_s.slice(0, rest.positionCount) }),
        draftLimit: [{ flow_gpm: 0, volume_gal: Math.min(...limits) }, { flow_gpm: 1000, volume_gal: Math.max(...limits) }],
        demandShare: total > 0 ? weight / total : i === 0 ? 1 : 0,
      })),
      tenders: tenders.map(({ dump, fill, choices, stretches, ...rest }, i) => {
        const lanes = laneCount === 0 ? [] : stretches.map((stretch) => ({ ...stretch, lane: stretch.lane % laneCount }))
        const wayOf = (way: { dump: number; fill: number; toFill_s: number; toDump_s: number }) => ({
          dumpIndex: way.dump % dumps.length, fillIndex: way.fill % fills.length, toFill_s: way.toFill_s, toDump_s: way.toDump_s,
          lanesToFill: passesOf(lanes, false), lanesToDump: passesOf(lanes, true),
        })
        const own = wayOf({ dump, fill, toFill_s: rest.toFill_s, toDump_s: rest.toDump_s })
        return { id: `tender-${i}`, ...rest, ...own, ...(choices && { ways: [own, ...choices.map(wayOf)] }) }
      }),
      lanes: Array.from({ length: laneCount }, (_, i) => ({ id: `lane-${i}` })),
      demand: { stages: gaps_s.map(([gap_s, flow_gpm]) => ({ from_s: (from_s += gap_s), flow_gpm })), firstDue, reserve_s },
    }
  })
