import { dependableFlow, doubtOf, NIGHT_COUNT, nightDrawer, prepareDoubt, tripSpreadShare, withTripSpread, type DoubtModel } from '@/lib/doubt'
import { advance, begin, compileShuttle, withDemand, type ShuttleSpec } from '@/lib/shuttle'
import { compilePlan } from '@/lib/supply'
import { smallBundle } from '@/tests/fixtures/bundle'
import { stepThrough } from '../time-step/one-second-model'
import { line, ratio } from './support/cost'

/** Processor time of one call in ms, so that others on the machine count for less: the best of three rounds. */
function cost_ms(run: () => unknown): number {
  let least = Infinity
  for (let round = 0; round < 3; round++) {
    const before = process.cpuUsage()
    run()
    const { user, system } = process.cpuUsage(before)
    least = Math.min(least, (user + system) / 1000)
  }
  return least
}

/** Eight tenders on the small plan, nothing measured. */
const compiled = compilePlan(smallBundle({
  'district.apparatus': [
    { id: 'p1', name: 'Engine 1', kind: 'pumper', stationId: 'st1', rated_gpm: 1000, tank_gal: 1000 },
    { id: 'p2', name: 'Engine 2', kind: 'pumper', stationId: 'st1', rated_gpm: 1000, tank_gal: 1000 },
    ...Array.from({ length: 8 }, (_, index) => ({ id: `t${index}`, name: `Tender ${index}`, kind: 'tender', stationId: 'st1', tank_gal: 1500 + 200 * index })),
  ],
  'plan.tenders': Array.from({ length: 8 }, (_, index) => ({ id: `k${index}`, tenderId: `t${index}` })),
  'plan.fillSites.0.bayCount': 2,
  'plan.dumpSites.0.positionCount': 2,
}))

function modelOf(): DoubtModel {
  const model = prepareDoubt(compiled)
  if (!model) throw new Error('the plan must have an answer')
  return model
}

/** Nights at one flow: each drawn, compiled and run from dispatch to two hours after supply is ready. */
function fixedNights(model: DoubtModel, count: number): void {
  const draw = nightDrawer(model, 1)
  const first = withDemand(compileShuttle(draw(0).spec), 500, { afterReady_s: 7200 })
  const state = begin(first)
  for (let night = 0; night < count; night++) {
    const scenario = withDemand(compileShuttle(draw(night).spec), 500, { afterReady_s: 7200 })
    begin(scenario, state)
    advance(scenario, state, scenario.spec.horizon_s)
  }
}

const NIGHTS = 10_000
console.log('doubt: eight tenders, two hours, every number in doubt')
line('compiling the plan at the ends of its inputs', cost_ms(modelOf), 'ms')
const model = modelOf()
line('inputs in doubt', model.inputs.length, '')
fixedNights(model, 500)
const fixed_ms = cost_ms(() => { fixedNights(model, NIGHTS) })
line('ten thousand nights at one flow, one core', fixed_ms / 1000, 's')
line('the same on two cores, shared evenly', fixed_ms / 2000, 's')
const plain: ShuttleSpec = { ...model.spec, tenders: model.spec.tenders.map(({ spread: _, ...tender }) => tender) }
const step_ms = cost_ms(() => stepThrough(plain, { flow: 500, lastsAfterReady: 7200 }))
line('the one-second model, one night of the plan', step_ms, 'ms')
ratio('a night in doubt against the one-second model', (step_ms * NIGHTS) / fixed_ms)
const drawn = compileShuttle(withTripSpread(plain, tripSpreadShare))
const planned = withDemand(drawn, 500, { afterReady_s: 7200 })
const kept = begin(planned)
const many_ms = cost_ms(() => { for (let run = 0; run < 1000; run++) { begin(planned, kept); advance(planned, kept, planned.spec.horizon_s) } })
line('one night without drawing and compiling it', many_ms, 'µs')
const dependable_ms = cost_ms(() => dependableFlow(model))
line(`dependable flow of ${NIGHT_COUNT} nights, decided nights dropped, one core`, dependable_ms, 'ms')
const whole_ms = cost_ms(() => doubtOf(model))
line('everything: flows, bands, chances, what explains it, one core', whole_ms, 'ms')
line('dependable flow as part of everything', dependable_ms / whole_ms, '')
