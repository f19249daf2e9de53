import type { Issue } from '../issue'
import { advance, settle } from './advance'
import { settledBalance, type Balance } from './balance'
import { AFTER_READY_S, withDemand, type RunDemand } from './demand-table'
import type { OnEvent } from './event'
import { feedSteps } from './feed-table'
import { PHASE } from './phase'
import { runIssues } from './run-issues'
import type { Scenario } from './scenario'
import type { FeedSpec } from './spec'
import { begin } from './start'
import { FIRE, type SimState } from './state'

export type RunOptions = {
  /** `planned`: as the spec says. `open`: dumping never blocked, nothing drawn. A number: that flow throughout. */
  readonly demand?: RunDemand
  /** How long after supply is ready the run lasts. Default: the spec's, else 7,200. */
  readonly afterReady_s?: number
}

export type DumpRun = {
  id: string
  supplyReady_s?: number
  /** Into the portable tanks. */
  received_gal: number
  /** Out of the tanks and the booster tank to the fire ground. */
  pumped_gal: number
  spilled_gal: number
  /** In the tanks the pumper drafts from. */
  level_gal: number
  /** In the tanks in front of them; absent where there are none. */
  front_gal?: number
  /** Lowest level since supply was ready, and when. */
  lowest_gal?: number
  lowest_s?: number
  /** Time a full tank held dumping back. */
  heldBack_s: number
  draftLossCount: number
  draftLost_s: number
  /** Part of the time since the site opened that each position was taken. */
  positionBusyShare: number[]
  /** Part of the time since it was set that the pumper fed the fire ground. */
  pumperBusyShare: number
}

export type FillRun = {
  id: string
  drawn_gal: number
  /** What is left in the source, absent when it does not run out. */
  source_gal?: number
  /** Time the bays had only the inflow. */
  sourceEmpty_s: number
  /** When the source first ran dry, after dispatch; absent when it never did. */
  sourceEmptyFrom_s?: number
  bayBusyShare: number[]
  /** Part of the time since the site opened that water ran into a tender. */
  pumperBusyShare: number
}

export type FeedRun = {
  id: string
  /** Brought into its site, or to the fire ground. */
  fed_gal: number
  /** When its source was used up; absent when it never was while the lay stood. */
  sourceEmptyFrom_s?: number
  /** What it brings from then on. */
  left_gpm?: number
}

export type TenderRun = {
  id: string
  /** Loads dumped. */
  roundCount: number
  given_gal: number
  waitedToDump_s: number
  waitedToFill_s: number
  /** At one-lane stretches. */
  waitedOnRoad_s: number
  /** Part of its time in the shuttle that it did not wait in a queue or on the road. */
  busyShare: number
}

export type ShuttleRun = {
  demand: RunDemand
  end_s: number
  firstWater_s?: number
  /** Every site that carries demand is ready. */
  supplyReady_s?: number
  engineEmpty_s?: number
  /** From the first engine's tank empty to supply ready, or to the end of the run if it never is. Absent without a first engine or before its tank is empty. */
  gap_s?: number
  /** Time the demand was not fully met since the first engine arrived (without one: since the first flow was asked for). */
  shortSinceArrival_s: number
  /** Time the demand was not fully met since all supply was ready. */
  shortSinceReady_s: number
  demanded_gal: number
  delivered_gal: number
  dumps: DumpRun[]
  fills: FillRun[]
  tenders: TenderRun[]
  /** Absent where no hose lay brings water. */
  feeds?: FeedRun[]
  balance: Balance
  issues: Issue[]
}

/**
 * One run from dispatch to `afterReady_s` after all supply is ready, at most to the horizon.
 *
 * @param scenario from `compileShuttle`
 * @returns what happened; issues as `runIssues`
 * @throws RangeError if a constant flow is negative or `afterReady_s` is not above 0
 */
export function runShuttle(scenario: Scenario, options: RunOptions = {}): ShuttleRun {
  const demand = options.demand ?? 'planned'
  const staged = scenarioFor(scenario, options)
  const state = begin(staged)
  runTo(staged, state)
  return readRun(staged, state, demand)
}

/** The scenario of a named run: its demand, and where it ends. */
export function scenarioFor(scenario: Scenario, options: RunOptions): Scenario {
  const afterReady_s = options.afterReady_s ?? scenario.spec.afterReady_s ?? AFTER_READY_S
  return withDemand(scenario, options.demand ?? 'planned', { afterReady_s })
}

/** Runs a state to the end of its run. */
export function runTo(scenario: Scenario, state: SimState, on?: OnEvent): void {
  advance(scenario, state, scenario.spec.horizon_s, on)
}

const reached = (time_s: number): number | undefined => (Number.isFinite(time_s) ? time_s : undefined)
const shareOf = (part_s: number, whole_s: number): number => (whole_s > 0 ? part_s / whole_s : 0)

/** Reads a run's figures off its state at its clock; moves the state's water up to it. */
export function readRun(scenario: Scenario, state: SimState, demand: RunDemand = scenario.demand.kind === 'open' ? 'open' : 'planned'): ShuttleRun {
  settle(scenario, state)
  const end_s = state.clock_s[0]!
  const { spec, slots } = scenario
  const { fire } = state
  const busyShares = (site: number, opened_s: number): number[] => {
    const shares: number[] = []
    for (let slot = slots.from[site]!; slot < slots.upTo[site]!; slot++) {
      const present_s = state.slotTender[slot]! >= 0 ? end_s - state.slotSince_s[slot]! : 0
      shares.push(shareOf(state.slotBusy_s[slot]! + present_s, end_s - opened_s))
    }
    return shares
  }
  const dumps = spec.dumps.map((dump, d): DumpRun => ({
    id: dump.id,
    supplyReady_s: reached(state.supplyReady_s[d]!),
    received_gal: state.received_gal[d]!,
    pumped_gal: state.pumped_gal[d]! + dump.booster_gal - state.booster_gal[d]!,
    spilled_gal: state.spilled_gal[d]!,
    level_gal: state.level_gal[d]!,
    ...(dump.front && { front_gal: state.front_gal[d]! }),
    lowest_gal: reached(state.lowest_gal[d]!),
    lowest_s: reached(state.lowest_s[d]!),
    heldBack_s: state.heldBack_s[d]!,
    draftLossCount: state.losses[d]!,
    draftLost_s: state.lost_s[d]!,
    positionBusyShare: busyShares(d, dump.ready_s),
    pumperBusyShare: shareOf(state.pumping_s[d]!, end_s - dump.pumpReady_s),
  }))
  const fills = spec.fills.map((fill, f): FillRun => ({
    id: fill.id,
    drawn_gal: state.drawn_gal[f]!,
    source_gal: reached(state.source_gal[f]!),
    sourceEmpty_s: state.dry_s[f]!,
    sourceEmptyFrom_s: reached(state.dryFrom_s[f]!),
    bayBusyShare: busyShares(spec.dumps.length + f, fill.ready_s),
    pumperBusyShare: shareOf(state.filling_s[f]!, end_s - fill.ready_s),
  }))
  const tenders = spec.tenders.map((tender, i): TenderRun => {
    const waits_s = waitingNow_s(state, i, end_s)
    const waitedToDump_s = state.waitedToDump_s[i]! + waits_s.toDump_s
    const waitedToFill_s = state.waitedToFill_s[i]! + waits_s.toFill_s
    const waitedOnRoad_s = state.waitedOnRoad_s[i]! + waits_s.onRoad_s
    const present_s = Math.min(end_s, state.left_s[i]!) - (tender.arrive_s ?? end_s)
    return {
      id: tender.id,
      roundCount: state.rounds[i]!,
      given_gal: state.given_gal[i]!,
      waitedToDump_s,
      waitedToFill_s,
      waitedOnRoad_s,
      busyShare: shareOf(present_s - waitedToDump_s - waitedToFill_s - waitedOnRoad_s, present_s),
    }
  })
  const engineEmpty_s = reached(fire[FIRE.engineEmpty_s]!)
  const supplyReady_s = reached(fire[FIRE.allReady_s]!)
  const run: Omit<ShuttleRun, 'issues'> = {
    demand,
    end_s,
    firstWater_s: reached(fire[FIRE.firstWater_s]!),
    supplyReady_s,
    engineEmpty_s,
    gap_s: engineEmpty_s === undefined ? undefined : Math.max(0, (supplyReady_s ?? end_s) - engineEmpty_s),
    shortSinceArrival_s: fire[FIRE.shortSinceArrival_s]!,
    shortSinceReady_s: fire[FIRE.shortSinceReady_s]!,
    demanded_gal: fire[FIRE.demanded_gal]!,
    delivered_gal: fire[FIRE.delivered_gal]!,
    dumps,
    fills,
    tenders,
    ...(spec.feeds && { feeds: spec.feeds.map((feed, j) => ({ id: feed.id, fed_gal: state.fed_gal[j]!, ...emptied(scenario, state, feed, j, end_s) })) }),
    balance: settledBalance(scenario, state),
  }
  return { ...run, issues: runIssues(run) }
}

/** When the source of a lay was used up while it stood, and what is left of its flow. */
function emptied({ pools }: Scenario, state: SimState, feed: FeedSpec, j: number, end_s: number): Pick<FeedRun, 'sourceEmptyFrom_s' | 'left_gpm'> {
  const pool = pools.ofFeed[j]!
  const low = feedSteps(feed, j)[1]
  const [from_s, left_gpm] = pool >= 0 ? [Math.max(feed.ready_s, state.poolDryFrom_s[pool]!), pools.lowFeed_gpm[j]!] : [low?.at_s ?? Infinity, low?.flow_gpm ?? 0]
  return from_s <= end_s ? { sourceEmptyFrom_s: from_s, left_gpm } : {}
}

function waitingNow_s(state: SimState, i: number, now_s: number): { toDump_s: number; toFill_s: number; onRoad_s: number } {
  const since_s = now_s - state.phaseSince_s[i]!
  const phase = state.phase[i]!
  return {
    toDump_s: phase === PHASE.waitsToDump ? since_s : 0,
    toFill_s: phase === PHASE.waitsToFill || phase === PHASE.waitsInBay ? since_s : 0,
    onRoad_s: phase === PHASE.waitsAtRoad ? since_s : 0,
  }
}
