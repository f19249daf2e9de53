import { settle } from './advance'
import { settledBalance } from './balance'
import type { RunDemand } from './demand-table'
import { feedSteps } from './feed-table'
import { PHASE } from './phase'
import { runIssues } from './run-issues'
import type { Scenario } from './scenario'
import type { DumpRun, FeedRun, FillRun, ShuttleRun, TenderRun } from './shuttle-run'
import type { FeedSpec } from './spec'
import { FIRE, type SimState } from './state'

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
