import { poolTableFor } from './pool-table'
import { tripStages, type FeedSpec, type FillSpec, type DumpSpec, type LanePass, type ShuttleSpec, type SpreadRange, type TenderSpec, type WayLanes } from './spec'

/** One number of a spec that no run can be made with. */
export type SpecBreach = { subjectId: string; path: string; value: number | string; rule: string }

type Note = (path: string, value: number | string | undefined, holds: boolean, rule: string) => void

const isAmount = (x: number | undefined): boolean => x !== undefined && Number.isFinite(x) && x >= 0
const isAbove0 = (x: number | undefined): boolean => x !== undefined && Number.isFinite(x) && x > 0
const isCount = (x: number): boolean => Number.isInteger(x) && x >= 1
const isShare = (x: number): boolean => x >= 0 && x <= 1
const AMOUNT = 'a number of 0 or more'
const ABOVE_0 = 'a number above 0'
const COUNT = 'a whole number of 1 or more'
/** The demand is tabled for every set of them run dry. */
const MOST_DIRECT_POOLS = 6

/**
 * Every number of a spec that breaks its contract: what `compileShuttle` throws for and
 * `checkSpec` reports.
 */
export function specBreaches(spec: ShuttleSpec): SpecBreach[] {
  const breaches: SpecBreach[] = []
  const noteFor = (subjectId: string, base: string): Note => (path, value, holds, rule) => {
    if (!holds) breaches.push({ subjectId, path: base + path, value: value ?? 'absent', rule })
  }
  const note = noteFor('', '')
  note('seed', spec.seed, Number.isInteger(spec.seed), 'a whole number')
  note('horizon_s', spec.horizon_s, isAbove0(spec.horizon_s), ABOVE_0)
  note('afterReady_s', spec.afterReady_s, spec.afterReady_s === undefined || isAbove0(spec.afterReady_s), ABOVE_0)
  spec.fills.forEach((fill, i) => checkFill(fill, noteFor(fill.id, `fills[${i}].`)))
  spec.dumps.forEach((dump, i) => checkDump(dump, noteFor(dump.id, `dumps[${i}].`)))
  spec.tenders.forEach((tender, i) => checkTender(tender, spec, noteFor(tender.id, `tenders[${i}].`)))
  spec.feeds?.forEach((feed, i) => checkFeed(feed, spec, noteFor(feed.id, `feeds[${i}].`)))
  for (const list of [spec.fills, spec.dumps, spec.tenders, spec.lanes ?? [], spec.feeds ?? []]) {
    const ids = list.map(({ id }) => id)
    ids.forEach((id, i) => note('id', id, ids.indexOf(id) === i, 'used once in its list'))
  }
  const sharing = spec.feeds?.some(({ sourceId }) => sourceId !== undefined) ? poolTableFor(spec).bitCount : 0
  note('feeds', sharing, sharing <= MOST_DIRECT_POOLS, `lays straight to the fire ground from ${MOST_DIRECT_POOLS} shared sources or fewer`)
  const shares = spec.dumps.reduce((sum, dump) => sum + dump.demandShare, 0)
  note('dumps.demandShare', shares, spec.dumps.length > 0 && Math.abs(shares - 1) < 1e-9, 'shares that sum to 1')
  let before_s = -Infinity
  spec.demand.stages.forEach((stage, i) => {
    note(`demand.stages[${i}].from_s`, stage.from_s, isAmount(stage.from_s) && stage.from_s > before_s, 'rising, 0 or more')
    note(`demand.stages[${i}].flow_gpm`, stage.flow_gpm, isAmount(stage.flow_gpm), AMOUNT)
    before_s = stage.from_s
  })
  note('demand.reserve_s', spec.demand.reserve_s, isAmount(spec.demand.reserve_s), AMOUNT)
  const engine = spec.demand.firstDue
  if (engine) {
    note('demand.firstDue.arrive_s', engine.arrive_s, isAmount(engine.arrive_s), AMOUNT)
    note('demand.firstDue.tank_gal', engine.tank_gal, isAmount(engine.tank_gal), AMOUNT)
  }
  return breaches
}

function checkFill(fill: FillSpec, note: Note): void {
  note('ready_s', fill.ready_s, isAmount(fill.ready_s), AMOUNT)
  note('bayCount', fill.bayCount, isCount(fill.bayCount), COUNT)
  note('bayRate_gpm', fill.bayRate_gpm.length, fill.bayRate_gpm.length === fill.bayCount, 'one rate for each count of bays')
  fill.bayRate_gpm.forEach((rate, i) => note(`bayRate_gpm[${i}]`, rate, isAbove0(rate), ABOVE_0))
  checkPlaces('bayAfter_s', fill.bayAfter_s, fill.bayCount, note)
  const flowing = fill.flowingBayCount
  note('flowingBayCount', flowing, flowing === undefined || (isCount(flowing) && flowing <= fill.bayCount), 'a whole number from 1 to the bays')
  note('usable_gal', fill.usable_gal, fill.usable_gal === undefined || isAmount(fill.usable_gal), AMOUNT)
  note('inflow_gpm', fill.inflow_gpm, fill.inflow_gpm === undefined || isAmount(fill.inflow_gpm), AMOUNT)
  checkSpread('spread', 'fill', 'night', fill.spread?.fill?.night, note)
  checkSpread('spread', 'fill', 'trip', fill.spread?.fill?.trip, note)
}

function checkFeed({ dumpIndex, fillIndex, ready_s, flow_gpm, usable_gal, inflow_gpm }: FeedSpec, spec: ShuttleSpec, note: Note): void {
  note('dumpIndex', dumpIndex, dumpIndex === undefined || spec.dumps[dumpIndex] !== undefined, 'the index of a dump site')
  note('fillIndex', fillIndex, fillIndex === undefined || (dumpIndex === undefined && spec.fills[fillIndex] !== undefined), 'the index of a fill site, with no dump site named')
  note('ready_s', ready_s, isAmount(ready_s), AMOUNT)
  note('flow_gpm', flow_gpm, isAbove0(flow_gpm), ABOVE_0)
  note('usable_gal', usable_gal, usable_gal === undefined || isAmount(usable_gal), AMOUNT)
  note('inflow_gpm', inflow_gpm, inflow_gpm === undefined || isAmount(inflow_gpm), AMOUNT)
}

function checkDump(dump: DumpSpec, note: Note): void {
  note('ready_s', dump.ready_s, isAmount(dump.ready_s), AMOUNT)
  note('pumpReady_s', dump.pumpReady_s, isAmount(dump.pumpReady_s) && dump.pumpReady_s >= dump.ready_s, 'not before ready_s')
  note('positionCount', dump.positionCount, isCount(dump.positionCount), COUNT)
  note('capacity_gal', dump.capacity_gal, isAbove0(dump.capacity_gal), ABOVE_0)
  note('reprime_s', dump.reprime_s, isAmount(dump.reprime_s), AMOUNT)
  note('restartMargin_s', dump.restartMargin_s, dump.restartMargin_s === undefined || isAbove0(dump.restartMargin_s), ABOVE_0)
  note('booster_gal', dump.booster_gal, isAmount(dump.booster_gal), AMOUNT)
  note('demandShare', dump.demandShare, isShare(dump.demandShare), 'between 0 and 1')
  checkPlaces('positionAfter_s', dump.positionAfter_s, dump.positionCount, note)
  note('intakeLimit_gpm', dump.intakeLimit_gpm, dump.intakeLimit_gpm === undefined || isAbove0(dump.intakeLimit_gpm), ABOVE_0)
  note('leak_gpm', dump.leak_gpm, dump.leak_gpm === undefined || isAmount(dump.leak_gpm), AMOUNT)
  if (dump.front) {
    note('front.capacity_gal', dump.front.capacity_gal, isAbove0(dump.front.capacity_gal), ABOVE_0)
    note('front.transfer_gpm', dump.front.transfer_gpm, isAbove0(dump.front.transfer_gpm), ABOVE_0)
  }
  let before_gpm = -Infinity
  dump.draftLimit.forEach((point, i) => {
    const rises = isAmount(point.flow_gpm) && point.flow_gpm > before_gpm
    note(`draftLimit[${i}].flow_gpm`, point.flow_gpm, rises, 'rising, 0 or more')
    note(`draftLimit[${i}].volume_gal`, point.volume_gal, isAmount(point.volume_gal), AMOUNT)
    before_gpm = point.flow_gpm
  })
}

function checkPlaces(path: string, after_s: readonly number[] | undefined, count: number, note: Note): void {
  if (!after_s) return
  note(path, after_s.length, after_s.length === count, 'one time for each place')
  after_s.forEach((wait_s, i) => note(`${path}[${i}]`, wait_s, isAmount(wait_s), AMOUNT))
}

function checkWay(way: WayLanes, path: string, spec: ShuttleSpec, note: Note): void {
  checkPasses(`${path}lanesToFill`, way.lanesToFill, spec, note)
  checkPasses(`${path}lanesToDump`, way.lanesToDump, spec, note)
}

function checkPasses(path: string, passes: readonly LanePass[] | undefined, spec: ShuttleSpec, note: Note): void {
  let before = 0
  passes?.forEach(({ laneIndex, fromShare, upToShare }, i) => {
    note(`${path}[${i}].laneIndex`, laneIndex, spec.lanes?.[laneIndex] !== undefined, 'the index of a one-lane stretch')
    note(`${path}[${i}].fromShare`, fromShare, fromShare >= before, 'rising, not before the end of the stretch before')
    note(`${path}[${i}].upToShare`, upToShare, upToShare >= fromShare && upToShare <= 1, 'from fromShare to 1')
    before = upToShare
  })
}

function checkTender(tender: TenderSpec, spec: ShuttleSpec, note: Note): void {
  note('usable_gal', tender.usable_gal, isAbove0(tender.usable_gal), ABOVE_0)
  note('arrive_s', tender.arrive_s, tender.arrive_s === undefined || isAmount(tender.arrive_s), AMOUNT)
  note('withdraw_s', tender.withdraw_s, tender.withdraw_s === undefined || isAmount(tender.withdraw_s), AMOUNT)
  note('dumpIndex', tender.dumpIndex, spec.dumps[tender.dumpIndex] !== undefined, 'the index of a dump site')
  note('fillIndex', tender.fillIndex, spec.fills[tender.fillIndex] !== undefined, 'the index of a fill site')
  const times = ['toFill_s', 'toDump_s', 'dumpPosition_s', 'dumpClear_s', 'fillPosition_s', 'fillClear_s'] as const
  for (const field of times) note(field, tender[field], isAmount(tender[field]), AMOUNT)
  checkWay(tender, '', spec, note)
  if (tender.ways) {
    const hasOwn = tender.ways.some(({ dumpIndex }) => dumpIndex === tender.dumpIndex)
    note('ways', tender.ways.length, hasOwn, 'one or more, one of them to its own dump site')
    tender.ways.forEach((way, i) => {
      note(`ways[${i}].dumpIndex`, way.dumpIndex, spec.dumps[way.dumpIndex] !== undefined, 'the index of a dump site')
      note(`ways[${i}].fillIndex`, way.fillIndex, spec.fills[way.fillIndex] !== undefined, 'the index of a fill site')
      note(`ways[${i}].toFill_s`, way.toFill_s, isAmount(way.toFill_s), AMOUNT)
      note(`ways[${i}].toDump_s`, way.toDump_s, isAmount(way.toDump_s), AMOUNT)
      checkWay(way, `ways[${i}].`, spec, note)
    })
  }
  if (tender.rest) {
    note('rest.after_s', tender.rest.after_s, isAbove0(tender.rest.after_s), ABOVE_0)
    note('rest.break_s', tender.rest.break_s, isAmount(tender.rest.break_s), AMOUNT)
  }
  note('dumpRate_gpm', tender.dumpRate_gpm.length, tender.dumpRate_gpm.length > 0, 'one rate or more')
  tender.dumpRate_gpm.forEach((rate, i) => note(`dumpRate_gpm[${i}]`, rate, isAbove0(rate), ABOVE_0))
  note('spillShare', tender.spillShare, tender.spillShare === undefined || (isShare(tender.spillShare) && tender.spillShare < 1), '0 or more, below 1')
  note('fillLimit_gpm', tender.fillLimit_gpm, isAbove0(tender.fillLimit_gpm), ABOVE_0)
  note('topUpShare', tender.topUpShare, isShare(tender.topUpShare), 'between 0 and 1')
  note('topUpRateShare', tender.topUpRateShare, isShare(tender.topUpRateShare) && tender.topUpRateShare > 0, 'above 0, at most 1')
  for (const stage of tripStages) {
    checkSpread('spread', stage, 'night', tender.spread?.[stage]?.night, note)
    checkSpread('spread', stage, 'trip', tender.spread?.[stage]?.trip, note)
    const known = tender.tripFactors?.[stage]
    if (known) note(`tripFactors.${stage}`, [...known.each, known.then].find((factor) => !isAbove0(factor)), [...known.each, known.then].every(isAbove0), 'numbers above 0')
  }
}

/** Words are made only for a breach: nights by the thousand are checked. */
function checkSpread(base: string, stage: string, kind: string, range: SpreadRange | undefined, note: Note): void {
  if (!range) return
  const { lowFactor, modeFactor, highFactor } = range
  if (isAbove0(lowFactor) && lowFactor <= modeFactor && modeFactor <= highFactor && Number.isFinite(highFactor)) return
  note(`${base}.${stage}.${kind}`, `${lowFactor}, ${modeFactor}, ${highFactor}`, false, 'low, mode and high factor in rising order, above 0')
}
