import { SECONDS_PER_MINUTE } from '../units'
import { tripStages, type ShuttleSpec, type TenderSpec, type TripFactors, type TripStage } from '../shuttle'
import type { Cause } from './causes-list'
import type { Happened } from './happened'

/** No tank of a drill holds this. */
const NEVER_FULL_GAL = 1e9
const LEAST_S = 1
const LEAST_GAL = 1

/**
 * The plan's numbers with some parts replaced by what happened.
 *
 * Stages that are replaced take the logged time of each trip and, once more trips are made than were logged, their mean.
 * Waiting that is replaced is added to the road before it, and no place is taken by anybody else; dumping that is
 * replaced finds the tanks never full: what they held back is in its times.
 *
 * @param extra tenders that came beside the plan, as they would have worked with nothing else changed
 */
export function replaySpec(spec: ShuttleSpec, happened: Happened, extra: readonly TenderSpec[], replaced: ReadonlySet<Cause>): ShuttleSpec {
  const own = replaced.has('tenders') ? [...spec.tenders, ...extra] : spec.tenders
  const tenders = own.map((tender) => tenderOf(spec, tender, happened, replaced))
  const count = Math.max(1, tenders.length)
  const { lanes, ...rest } = spec
  return {
    ...rest,
    ...(lanes && !replaced.has('travel') && { lanes }),
    fills: spec.fills.map((fill) => {
      const { bayAfter_s, flowingBayCount, usable_gal, ...base } = fill
      const factor = replaced.has('supply') ? happened.fillFactor.get(fill.id) ?? 1 : 1
      const isFree = replaced.has('waiting')
      const bayCount = isFree ? Math.max(count, fill.bayCount) : fill.bayCount
      const whole_gpm = (fill.bayRate_gpm[fill.bayCount - 1] ?? 0) * fill.bayCount
      return {
        ...base, bayCount,
        ready_s: replaced.has('start') ? happened.ready_s.get(fill.id) ?? fill.ready_s : fill.ready_s,
        bayRate_gpm: Array.from({ length: bayCount }, (_, k) => (replaced.has('filling') ? NEVER_FULL_GAL : (fill.bayRate_gpm[k] ?? whole_gpm / (k + 1)) / factor)),
        ...(bayAfter_s && !replaced.has('start') && !isFree && { bayAfter_s }),
        ...(flowingBayCount !== undefined && !isFree && { flowingBayCount }),
        ...(usable_gal !== undefined && !replaced.has('supply') && !replaced.has('filling') && { usable_gal }),
      }
    }),
    dumps: spec.dumps.map((dump) => {
      const { positionAfter_s, intakeLimit_gpm, ...base } = dump
      const isFree = replaced.has('waiting')
      const ready_s = replaced.has('start') ? happened.ready_s.get(dump.id) ?? dump.ready_s : dump.ready_s
      return {
        ...base, ready_s,
        pumpReady_s: Math.max(ready_s, dump.pumpReady_s + ready_s - dump.ready_s),
        positionCount: isFree ? Math.max(count, dump.positionCount) : dump.positionCount,
        ...(positionAfter_s && !replaced.has('start') && !isFree && { positionAfter_s }),
        ...(intakeLimit_gpm !== undefined && !replaced.has('dumping') && { intakeLimit_gpm }),
        ...(replaced.has('dumping') && { capacity_gal: NEVER_FULL_GAL, ...(dump.front && { front: { ...dump.front, capacity_gal: NEVER_FULL_GAL } }) }),
      }
    }),
    tenders,
  }
}

function tenderOf(spec: ShuttleSpec, tender: TenderSpec, happened: Happened, replaced: ReadonlySet<Cause>): TenderSpec {
  const was = happened.tenders.find(({ id }) => id === tender.id)
  if (!was) {
    const { arrive_s, ...out } = tender
    return replaced.has('tenders') ? out : { ...out, ...(arrive_s !== undefined && { arrive_s }), ...(replaced.has('filling') && plannedFilling(spec, tender)) }
  }
  const factors: { [S in TripStage]?: TripFactors } = {}
  const changed: { -readonly [K in keyof TenderSpec]: TenderSpec[K] } = { ...tender }
  const told = (stage: TripStage, each_s: readonly number[], planned_s: number, base_s = 1): void => {
    const mean_s = each_s.length > 0 ? each_s.reduce((sum, one) => sum + one, 0) / each_s.length : planned_s
    factors[stage] = { each: each_s.map((one) => Math.max(LEAST_S, one) / base_s), then: Math.max(LEAST_S, mean_s) / base_s }
  }
  const load_gal = meanOf(was.loads_gal, tender.usable_gal)
  if (replaced.has('notFull')) changed.usable_gal = Math.max(LEAST_GAL, load_gal)
  const usable_gal = changed.usable_gal
  // A trip with less aboard took less time; the load is a part of its own.
  const scaled = (each_s: readonly number[], loads_gal: readonly number[]) => each_s.map((one, k) => ((loads_gal[k] ?? 0) > 0 ? (one * usable_gal) / loads_gal[k]! : one))

  if (replaced.has('start')) changed.arrive_s = was.arrive_s
  if (replaced.has('tenders')) {
    delete changed.withdraw_s
    if (was.gone_s !== undefined) changed.withdraw_s = Math.max(0, was.gone_s - 1)
  }
  if (replaced.has('hookUp')) {
    for (const [stage, field] of [['dumpPosition', 'dumpPosition_s'], ['dumpClear', 'dumpClear_s'], ['fillPosition', 'fillPosition_s'], ['fillClear', 'fillClear_s']] as const) {
      told(stage, was.stages_s[stage], tender[field])
      changed[field] = 1
    }
  }
  if (replaced.has('supply') && was.stops_s.some((one) => one > 0)) {
    const base_s = Math.max(LEAST_S, tender.fillPosition_s)
    const each_s = was.stops_s.map((stop_s, k) => stop_s + (replaced.has('hookUp') ? was.stages_s.fillPosition[k] ?? base_s : base_s))
    told('fillPosition', each_s, base_s)
    changed.fillPosition_s = 1
  }
  if (replaced.has('dumping')) {
    told('dump', scaled(was.stages_s.dump, was.loads_gal), LEAST_S)
    if (was.stages_s.dump.length > 0) changed.dumpRate_gpm = [usable_gal * SECONDS_PER_MINUTE]
    else delete factors.dump
  }
  if (replaced.has('filling')) {
    const site = spec.fills[was.fillIndex]
    const share = replaced.has('supply') ? 1 : happened.fillFactor.get(site?.id ?? '') ?? 1
    const planned_s = fillAlone_s(spec, tender)
    told('fill', scaled(was.stages_s.fill.map((one) => one / share), was.loads_gal.slice(1)), planned_s)
    Object.assign(changed, { fillLimit_gpm: usable_gal * SECONDS_PER_MINUTE, topUpShare: 0, topUpRateShare: 1 })
  }
  if (replaced.has('travel')) {
    delete changed.ways
    delete changed.lanesToFill
    delete changed.lanesToDump
    delete changed.rest
    Object.assign(changed, { dumpIndex: was.dumpIndex, fillIndex: was.fillIndex })
  }
  const waits = replaced.has('waiting')
  if (waits && changed.arrive_s !== undefined) changed.arrive_s += was.dumpWaits_s[0] ?? 0
  if (replaced.has('travel') || waits) {
    road('toFill', 'toFill_s', was.fillWaits_s)
    road('toDump', 'toDump_s', was.dumpWaits_s.slice(1))
  }
  function road(stage: 'toFill' | 'toDump', field: 'toFill_s' | 'toDump_s', waits_s: readonly number[]): void {
    const isTold = replaced.has('travel')
    const count = Math.max(was!.stages_s[stage].length, waits ? waits_s.length : 0)
    const mean_s = meanOf(was!.stages_s[stage], tender[field])
    const each_s = Array.from({ length: count }, (_, k) => (isTold ? was!.stages_s[stage][k] ?? mean_s : tender[field]) + (waits ? waits_s[k] ?? 0 : 0))
    const base_s = isTold ? 1 : Math.max(LEAST_S, tender[field])
    told(stage, each_s, tender[field], base_s)
    changed[field] = base_s
    // The first leg has count 1 in the simulation.
    factors[stage] = { ...factors[stage]!, each: [1, ...factors[stage]!.each] }
  }
  return tripStages.some((stage) => factors[stage]) ? { ...changed, tripFactors: factors } : changed
}

/** A tender nobody saw fills as planned beside those whose fillings are told. */
const plannedFilling = (spec: ShuttleSpec, tender: TenderSpec) => ({ fillLimit_gpm: (tender.usable_gal * SECONDS_PER_MINUTE) / fillAlone_s(spec, tender), topUpShare: 0, topUpRateShare: 1 })

function fillAlone_s(spec: ShuttleSpec, { usable_gal, fillLimit_gpm, topUpShare, topUpRateShare, fillIndex }: TenderSpec): number {
  const rate_gpm = Math.min(fillLimit_gpm, spec.fills[fillIndex]?.bayRate_gpm[0] ?? fillLimit_gpm)
  return Math.max(LEAST_S, (usable_gal / rate_gpm) * SECONDS_PER_MINUTE * (1 - topUpShare + topUpShare / topUpRateShare))
}

const meanOf = (values: readonly number[], otherwise: number): number => (values.length > 0 ? values.reduce((sum, one) => sum + one, 0) / values.length : otherwise)
