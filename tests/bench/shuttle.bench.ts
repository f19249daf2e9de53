import { advance, begin, compileShuttle, hauledCapacity, runShuttle, sustainableFlow, withDemand, type ShuttleSpec } from '@/lib/shuttle'
import { stepThrough } from '../time-step/one-second-model'
import { randomSpecs } from '../time-step/random-specs'
import { cost, line, ratio } from './support/cost'

const spec: ShuttleSpec = {
  seed: 1,
  horizon_s: 7800,
  fills: [{ id: 'fill', ready_s: 600, bayCount: 1, bayRate_gpm: [1000] }],
  dumps: [{
    id: 'dump', ready_s: 480, pumpReady_s: 600, positionCount: 1, capacity_gal: 3000, reprime_s: 90, booster_gal: 500, demandShare: 1,
    draftLimit: [{ flow_gpm: 500, volume_gal: 300 }, { flow_gpm: 1000, volume_gal: 600 }],
  }],
  tenders: Array.from({ length: 8 }, (_, i) => ({
    id: `tender-${i}`, usable_gal: 1800, arrive_s: 400 + 60 * i, dumpIndex: 0, fillIndex: 0, toFill_s: 270, toDump_s: 270,
    dumpPosition_s: 30, dumpClear_s: 20, dumpRate_gpm: [1200], fillPosition_s: 45, fillClear_s: 30, fillLimit_gpm: 900, topUpShare: 0.1, topUpRateShare: 0.5,
  })),
  demand: { stages: [{ from_s: 300, flow_gpm: 500 }], firstDue: { arrive_s: 300, tank_gal: 1000 }, reserve_s: 120 },
}

const scenario = compileShuttle(spec)
const fixed = withDemand(scenario, 500)
const state = begin(fixed)
const runFixed = () => {
  begin(fixed, state)
  advance(fixed, state, 7800)
}
const fixed_us = cost(2000, runFixed)
const loads = state.rounds.reduce((sum, rounds) => sum + rounds, 0)
const step_us = cost(3, () => stepThrough(spec, { flow: 500, lastsAfterReady: 7200 }))

console.log('eight tenders, two hours, one flow')
line('one run', fixed_us, 'µs')
line('loads dumped in it', loads, '')
line('simulated trips a second', 1e6 / (fixed_us / loads), '')
line('ten thousand runs on one core', fixed_us / 100, 's')
line('the one-second model, same run', step_us, 'µs')
ratio('eight tenders, two hours: a run against the one-second model', step_us / fixed_us)

const open = withDemand(scenario, 'open')
const open_us = cost(2000, () => {
  begin(open, state)
  advance(open, state, 7800)
})
line('dumping never blocked', open_us, 'µs')
line('simulated trips a second, dumping never blocked', 1e6 / (open_us / state.rounds.reduce((sum, rounds) => sum + rounds, 0)), '')

console.log('questions')
line('compile', cost(500, () => compileShuttle(spec)), 'µs')
line('run with all its figures', cost(500, () => runShuttle(scenario)), 'µs')
line('hauled capacity', cost(500, () => hauledCapacity(scenario)), 'µs')
line('sustainable flow', cost(100, () => sustainableFlow(scenario)), 'µs')
const layouts = randomSpecs(100).map((layout) => compileShuttle(layout))
line('sustainable flow, mean of 100 random layouts', cost(1, () => layouts.forEach((layout) => sustainableFlow(layout))) / layouts.length, 'µs')

let worst = 0
for (const layout of randomSpecs(10_000, (chance) => 1.4 * chance, 5)) {
  const { balance } = runShuttle(compileShuttle(layout))
  worst = Math.max(worst, Math.abs(balance.error_gal) / (balance.initial_gal + balance.drawn_gal))
}
line('water balance, worst of 10,000 layouts, parts in a million million', worst * 1e12, '')

/** The same round by as many tenders and hours as asked, with places in proportion, so that the work grows and not the queue. */
function layoutOf(tenderCount: number, hours: number): ShuttleSpec {
  const places = Math.max(1, Math.round(tenderCount / 8))
  return {
    ...spec,
    horizon_s: hours * 3600 + 600,
    fills: [{ id: 'fill', ready_s: 600, bayCount: places, bayRate_gpm: Array<number>(places).fill(1000) }],
    dumps: [{ ...spec.dumps[0]!, positionCount: places, capacity_gal: 3000 * places }],
    tenders: Array.from({ length: tenderCount }, (_, i) => ({ ...spec.tenders[i % 8]!, id: `tender-${i}`, arrive_s: 400 + (480 * i) / tenderCount })),
  }
}

console.log('scaling: one fixed-flow run, µs on one core, and how many times as quick as the one-second model')
console.log(['tenders', 'hours', 'run µs', 'a trip µs', 'nights a second', 'one-second µs', 'ratio'].map((head) => head.padStart(16)).join(''))
/** The compiler takes its time before the first row is measured, not within it. */
for (const tenderCount of [2, 4, 8, 16, 32, 64]) {
  const warm = withDemand(compileShuttle(layoutOf(tenderCount, 2)), 60 * tenderCount)
  for (let i = 0; i < 300; i++) advance(warm, begin(warm), 7800)
  stepThrough(layoutOf(tenderCount, 1), { flow: 60 * tenderCount, lastsAfterReady: 3600 })
}
const perTrip_us = new Map<string, number>()
const quicker: number[] = []
for (const [tenderCount, hours] of [[2, 2], [4, 2], [8, 2], [16, 2], [32, 2], [64, 2], [8, 1], [8, 4], [8, 8], [8, 16]] as const) {
  const layout = layoutOf(tenderCount, hours)
  const flow_gpm = 60 * tenderCount
  const fixedFlow = withDemand(compileShuttle(layout), flow_gpm)
  const own = begin(fixedFlow)
  // Small rounds and many of them: the least is then free of what others on the machine did.
  const run_us = cost(Math.ceil(4000 / tenderCount / hours), () => {
    begin(fixedFlow, own)
    advance(fixedFlow, own, layout.horizon_s)
  }, 30)
  const trips = own.rounds.reduce((sum, rounds) => sum + rounds, 0)
  const plain_us = cost(1, () => stepThrough(layout, { flow: flow_gpm, lastsAfterReady: hours * 3600 }), 5)
  perTrip_us.set(`${tenderCount} ${hours}`, run_us / trips)
  quicker.push(plain_us / run_us)
  console.log([tenderCount, hours, run_us.toFixed(1), (run_us / trips).toFixed(3), Math.round(1e6 / run_us), Math.round(plain_us), Math.round(plain_us / run_us)].map((value) => String(value).padStart(16)).join(''))
}

const trip_us = (tenderCount: number, hours: number): number => perTrip_us.get(`${tenderCount} ${hours}`) ?? NaN
ratio('a run against the one-second model, least of the table', Math.min(...quicker))
ratio('a run against the one-second model, most of the table', Math.max(...quicker))
ratio('a trip among 32 tenders over one among 8 (1 is linear)', trip_us(32, 2) / trip_us(8, 2))
ratio('a trip among 64 tenders over one among 8 (1 is linear)', trip_us(64, 2) / trip_us(8, 2))
ratio('a trip in sixteen hours over one in two (1 is linear)', trip_us(8, 16) / trip_us(8, 2))

/** What each part of the full depth costs on the eight-tender night. */
console.log('parts of the full depth: one run of the eight-tender night')
const middle = [{ laneIndex: 0, fromShare: 0.4, upToShare: 0.6 }]
const dump = spec.dumps[0]!
const parts: [string, ShuttleSpec][] = [
  ['plain', spec],
  ['tanks in front', { ...spec, dumps: [{ ...dump, front: { capacity_gal: 3000, transfer_gpm: 700 } }] }],
  ['a leak', { ...spec, dumps: [{ ...dump, leak_gpm: 10 }] }],
  ['one-lane stretch', { ...spec, lanes: [{ id: 'lane' }], tenders: spec.tenders.map((tender) => ({ ...tender, lanesToFill: middle, lanesToDump: middle })) }],
  ['choosing of two fill sites', {
    ...spec, fills: [...spec.fills, { ...spec.fills[0]!, id: 'other' }],
    tenders: spec.tenders.map((tender) => ({ ...tender, ways: [0, 1].map((fillIndex) => ({ dumpIndex: 0, fillIndex, toFill_s: 270 + 30 * fillIndex, toDump_s: 270 + 30 * fillIndex })) })),
  }],
]
for (const [name, part] of parts) {
  const fixedFlow = withDemand(compileShuttle(part), 400)
  const own = begin(fixedFlow)
  line(name, cost(1000, () => {
    begin(fixedFlow, own)
    advance(fixedFlow, own, 7800)
  }), 'µs')
}
