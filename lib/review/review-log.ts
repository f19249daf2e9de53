import type { District, FieldLog, SiteEvent } from '../plan'
import { compileShuttle, sustainableFlow } from '../shuttle'
import { creditRules, pumpCapacity_gpm, supplyChart, type SupplyChart } from '../supply'
import type { ReviewAssumption } from './assumption'
import { criterionShown, type Shown } from './criterion-shown'
import { curvesOf, type Curves } from './curves'
import { heldFlow_gpm } from './held-flow'
import { broughtBy_gal, type Load } from './loads'
import { logChart } from './log-chart'
import { logEvents, type Reading } from './log-events'
import type { Measure } from './measure'
import { measuresOf } from './measures'
import { differenceOf, findWindow, readTrips } from './read-trips'
import type { Difference, Window } from './why-different'

/** One tender in a review. */
export type TenderReview = { readonly id: string; readonly loadCount: number; readonly given_gal: number; readonly round_s?: number; readonly waited_s?: number }

/** What a log achieved, against its plan and what was needed, and why. Times are seconds after dispatch. */
export type LogReview = {
  readonly logId: string
  readonly zero_ms: number
  readonly end_s: number
  readonly arrive_s?: number
  /** Time over which flows are compared; absent while nothing was brought. */
  readonly window?: Window
  readonly achieved_gpm?: number
  /** Mean into the tanks of the plan, run over the same window with what it says is asked for. */
  readonly planned_gpm?: number
  /** What the plan itself promises at best: its expected sustainable flow. */
  readonly expected_gpm?: number
  readonly needed_gpm?: number
  /** Constant flow that the water held; absent for a short log. */
  readonly held_gpm?: number
  /** Absent without a plan. */
  readonly difference?: Difference
  readonly loads: readonly Load[]
  readonly tenders: readonly TenderReview[]
  readonly readings: readonly Reading[]
  readonly curves: Curves
  readonly chart: SupplyChart
  readonly plannedChart?: SupplyChart
  /** 250 gpm from 5 minutes after the first arrival for 2 hours; absent while nobody was seen to arrive. */
  readonly steady?: Shown
  /** The officer's own. */
  readonly own?: Shown
  readonly measures: readonly Measure[]
  readonly assumptions: readonly ReviewAssumption[]
}

/**
 * The review of a log: trips found from its events, the flow they made, what it should have been, and the difference by its causes.
 *
 * @param events     that count, laid on one clock
 * @param district   the live one, for what a log without a plan names
 * @param onProgress part of the replays done, 0 to 1
 */
export function reviewLog(log: FieldLog, events: readonly SiteEvent[], district?: District, onProgress?: (share: number) => void): LogReview {
  const assumptions: ReviewAssumption[] = []
  const read = logEvents(log, events, district, (one) => { assumptions.push(one) })
  const { compiled, end_s, readings } = read
  const spec = compiled?.spec
  const trips = readTrips(read.tenders, read.byTender, spec, end_s)
  const { loads } = trips
  const window = loads.length > 0 ? findWindow(trips, spec) : undefined
  const found = spec && differenceOf(trips, spec, onProgress)
  const stages = compiled?.demand.stages ?? []
  const needed = log.needed_gpm === undefined ? stages : [{ from_s: read.arrive_s ?? 0, flow_gpm: log.needed_gpm }]
  // A log names the most that was asked for; where that is the plan's own, its stages say how much of it when.
  const askedThen = log.needed_gpm !== undefined && log.needed_gpm === compiled?.demand.needed_gpm ? stages : needed
  const needed_gpm = needed.length > 0 ? Math.max(...needed.map(({ flow_gpm }) => flow_gpm)) : undefined
  const plannedChart = compiled && supplyChart(compiled)
  const tank_gal = spec?.demand.firstDue?.tank_gal ?? 0
  const criterion = log.criterion ?? compiled?.bundle.plan.criterion
  const shown = (flow_gpm: number, from_s: number, for_s: number): Shown => criterionShown({ flow_gpm, from_s, for_s }, loads, readings, tank_gal, end_s, askedThen)
  const held_gpm = window && heldFlow_gpm(loads, window.end_s)
  const expected_gpm = compiled && spec && Math.min(sustainableFlow(compileShuttle(spec)).flow_gpm, pumpCapacity_gpm(compiled))
  const achieved_gpm = found?.difference.achieved_gpm ?? (window && (broughtBy_gal(loads, window.end_s) * 60) / (window.end_s - window.from_s))
  return {
    logId: log.id, zero_ms: read.zero_ms, end_s, loads, readings,
    ...(read.arrive_s !== undefined && { arrive_s: read.arrive_s }),
    ...(window && { window }),
    ...(achieved_gpm !== undefined && { achieved_gpm }),
    ...(found && { planned_gpm: found.difference.planned_gpm, difference: found.difference }),
    ...(expected_gpm !== undefined && { expected_gpm }),
    ...(needed_gpm !== undefined && { needed_gpm }),
    ...(held_gpm !== undefined && { held_gpm }),
    tenders: trips.logs.filter(({ stays }) => stays.length > 0).map(({ tender: { id }, loads: own }): TenderReview => {
      const was = found?.happened.tenders.find((one) => one.id === id)
      const rounds = own.length - 1
      return {
        id, loadCount: own.length, given_gal: own.reduce((sum, { given_gal }) => sum + given_gal, 0),
        ...(rounds > 0 && { round_s: (own[rounds]!.from_s - own[0]!.from_s) / rounds }),
        ...(was && { waited_s: [...was.dumpWaits_s, ...was.fillWaits_s].reduce((sum, wait_s) => sum + wait_s, 0) }),
      }
    }),
    curves: curvesOf(loads, spec, needed, end_s),
    chart: logChart(trips.logs, readings, plannedChart, found?.happened.tenders ?? [], end_s),
    ...(plannedChart && { plannedChart }),
    ...(read.arrive_s !== undefined && { steady: shown(creditRules.minimum_gpm, read.arrive_s + creditRules.startWithin_s, creditRules.duration_s) }),
    ...(criterion && { own: shown(criterion.flow_gpm, criterion.by_s, criterion.for_s) }),
    measures: measuresOf(trips.logs, read),
    assumptions: [...assumptions, ...trips.assumptions],
  }
}
