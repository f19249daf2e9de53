import { advance, begin, compileShuttle, sustainableFlow, withDemand, type ShuttleSpec } from '@/lib/shuttle'
import { compilePlan, evaluatePlan } from '@/lib/supply'
import { stepThrough } from '../time-step/one-second-model'
import { shippedBundle } from '../unit/demo/shipped-demo'
import { cost, line, ratio } from './support/cost'

/**
 * How one run and one answer grow with tenders and hours, against a plain model that steps through every
 * second. Bays and positions grow with the tenders, so that it is the shuttle that grows and not a queue.
 */
const tenderCounts = [2, 4, 8, 16, 32]
const hours = [1, 2, 4]

function specOf(tenders: number, hour: number): ShuttleSpec {
  const places = Math.max(1, tenders / 4)
  const lasts_s = hour * 3600
  return {
    seed: 1, horizon_s: 900 + lasts_s, afterReady_s: lasts_s,
    fills: [{ id: 'fill', ready_s: 600, bayCount: places, bayRate_gpm: Array<number>(places).fill(1000) }],
    dumps: [{
      id: 'dump', ready_s: 480, pumpReady_s: 600, positionCount: places, capacity_gal: 3000 * places, reprime_s: 90, booster_gal: 500, demandShare: 1,
      draftLimit: [{ flow_gpm: 500, volume_gal: 300 * places }, { flow_gpm: 2000, volume_gal: 600 * places }],
    }],
    tenders: Array.from({ length: tenders }, (_, i) => ({
      id: `tender-${i}`, usable_gal: 1800, arrive_s: 400 + 20 * i, dumpIndex: 0, fillIndex: 0, toFill_s: 270, toDump_s: 270,
      dumpPosition_s: 30, dumpClear_s: 20, dumpRate_gpm: [1200], fillPosition_s: 45, fillClear_s: 30, fillLimit_gpm: 900, topUpShare: 0.1, topUpRateShare: 0.5,
    })),
    demand: { stages: [{ from_s: 300, flow_gpm: 60 * tenders }], firstDue: { arrive_s: 300, tank_gal: 1000 }, reserve_s: 120 },
  }
}

/** The compiler takes its time before the first cell is measured, not within it. */
for (const tenders of tenderCounts) {
  const warm = withDemand(compileShuttle(specOf(tenders, 1)), 60 * tenders)
  for (let i = 0; i < 2000; i++) advance(warm, begin(warm), 4500)
  stepThrough(specOf(tenders, 1), { flow: 60 * tenders, lastsAfterReady: 3600 })
}

const perTrip_us = new Map<string, number>()
console.log('one run at one flow: µs a run · µs a load brought · times as quick as the one-second model')
console.log(`${'tenders'.padEnd(10)}${hours.map((hour) => `${hour} h`.padStart(28)).join('')}`)
const quicker: number[] = []
for (const tenders of tenderCounts) {
  const cells = hours.map((hour) => {
    const spec = specOf(tenders, hour)
    const flow_gpm = 60 * tenders
    const fixed = withDemand(compileShuttle(spec), flow_gpm)
    const state = begin(fixed)
    const run_us = cost(Math.ceil(3000 / tenders / hour), () => {
      begin(fixed, state)
      advance(fixed, state, spec.horizon_s)
    })
    const loads = state.rounds.reduce((sum, rounds) => sum + rounds, 0)
    const step_us = cost(1, () => stepThrough(spec, { flow: flow_gpm, lastsAfterReady: hour * 3600 }), 3)
    perTrip_us.set(`${tenders} ${hour}`, run_us / loads)
    quicker.push(step_us / run_us)
    return `${run_us.toFixed(1).padStart(10)} · ${(run_us / loads).toFixed(2)} · ${Math.round(step_us / run_us)}×`.padStart(28)
  })
  console.log(`${String(tenders).padEnd(10)}${cells.join('')}`)
}
const at = (tenders: number, hour: number) => perTrip_us.get(`${tenders} ${hour}`) ?? NaN
ratio('a run against the one-second model: least of the table', Math.min(...quicker))
ratio('a run against the one-second model: most of the table', Math.max(...quicker))
ratio('cost of a load with 32 tenders over that with 4, two hours (1 is linear)', at(32, 2) / at(4, 2))
ratio('cost of a load in four hours over that in one, 8 tenders (1 is linear)', at(8, 4) / at(8, 1))

console.log('\nanswers')
const eight = compileShuttle(specOf(8, 2))
const run = withDemand(eight, 480)
const state = begin(run)
const run_us = cost(500, () => { begin(run, state); advance(run, state, 8100) })
const search_us = cost(20, () => sustainableFlow(eight))
line('sustainable flow, 8 tenders, two hours', search_us / 1000, 'ms')
ratio('runs that a sustainable flow costs', search_us / run_us)
const bundle = shippedBundle('plan-school')
line('a plan to numbers (demo: school)', cost(5, () => compilePlan(bundle), 3) / 1000, 'ms')
line('first answer of a plan, limiting link left out', cost(3, () => evaluatePlan(bundle, { quick: true }), 3) / 1000, 'ms')
line('whole answer of a plan, with what to measure', cost(1, () => evaluatePlan(bundle), 2) / 1000, 'ms')
