import { issue, type Issue } from '../issue'
import { SECONDS_PER_MINUTE } from '../units'
import { EVENT } from './event'
import { runTo, scenarioFor } from './run-shuttle'
import type { Scenario } from './scenario'
import type { ShuttleSpec, TenderSpec } from './spec'
import { begin } from './start'
import { FIRE } from './state'
import { waysOfTender } from './way-table'

export type HauledCapacity = {
  /** Into all dump sites together. */
  hauledCapacity_gpm: number
  byDump_gpm: number[]
  byTender_gpm: number[]
  /** The whole rounds each tender was measured over, from dump end to dump end; absent for one that makes no round. */
  measured: ({ readonly from_s: number; readonly to_s: number; readonly roundCount: number } | undefined)[]
  /** Every tender has finished its first full round: the steady window begins. */
  steadyFrom_s: number
  supplyReady_s?: number
  end_s: number
  /** Fewest whole rounds any tender was measured over. */
  roundCount: number
  issues: Issue[]
  /** Water brought to each dump site by the start of each dump and at the end: the unthrottled haul. */
  brought: { readonly time_s: number; readonly dump: number; readonly sum_gal: number }[]
}

/**
 * Gallons a minute the shuttle brings to its dump sites when dumping is never blocked.
 *
 *   Σ over tenders of  load kept · rounds / (time of those rounds)
 *
 * measured from dump to dump, after every tender's first full round, over whole rounds:
 * as many as fit the run, in a multiple of the positions and bays that take turns, so that
 * a rhythm longer than one round is not cut. A tender stopped at the end of the run
 * (dry source) has that time counted.
 *
 * @returns figures; issue `tender-makes-no-round` (note) for one that never comes back
 */
export function hauledCapacity(scenario: Scenario, options: { readonly afterReady_s?: number } = {}): HauledCapacity {
  const open = scenarioFor(scenario, { demand: 'open', afterReady_s: options.afterReady_s })
  const { tenders, dumps, spec } = open
  const state = begin(open)
  const ends_s: number[][] = spec.tenders.map(() => [])
  const endSites: number[][] = spec.tenders.map(() => [])
  const brought: { time_s: number; dump: number; sum_gal: number }[] = []
  runTo(open, state, (kind, time_s, tender, site) => {
    if (kind === EVENT['ends-dump']) {
      ends_s[tender]!.push(time_s)
      endSites[tender]!.push(site)
    } else if (kind === EVENT['starts-dump']) brought.push({ time_s, dump: site, sum_gal: state.level_gal[site]! })
  })
  const end_s = state.clock_s[0]!
  const steadyFrom_s = ends_s.reduce((latest_s, ends) => Math.max(latest_s, ends[1] ?? 0), 0)
  const byDump_gpm = spec.dumps.map(() => 0)
  const issues: Issue[] = []
  const measured: HauledCapacity['measured'] = spec.tenders.map(() => undefined)
  let roundCount = Infinity
  const byTender_gpm = spec.tenders.map((tender, i) => {
    const ends = ends_s[i]!
    if (ends.length < 2) {
      if (ends.length > 0 || tender.arrive_s !== undefined) issues.push(issue('tender-makes-no-round', 'note', [tender.id], { end_s }))
      return 0
    }
    const { rounds, from, taken_s } = wholeRounds(ends, steadyFrom_s, turnsOf(spec, tender), Math.min(end_s, state.left_s[i]!), end_s)
    measured[i] = { from_s: ends[from]!, to_s: ends[from]! + taken_s, roundCount: rounds }
    roundCount = Math.min(roundCount, rounds)
    const gpm = (tenders.load_gal[i]! * tenders.keptShare[i]! * rounds * SECONDS_PER_MINUTE) / taken_s
    for (const site of endSites[i]!.slice(from + 1, from + rounds + 1)) byDump_gpm[site] = byDump_gpm[site]! + gpm / rounds
    return gpm
  })
  const ready_s = state.fire[FIRE.allReady_s]!
  for (let d = 0; d < dumps.count; d++) {
    const since_min = (end_s - state.dumpSince_s[d]!) / SECONDS_PER_MINUTE
    brought.push({ time_s: end_s, dump: d, sum_gal: state.level_gal[d]! + state.in_gpm[d]! * since_min })
  }
  return {
    hauledCapacity_gpm: byDump_gpm.reduce((sum, gpm) => sum + gpm, 0),
    byDump_gpm,
    byTender_gpm,
    measured,
    steadyFrom_s,
    supplyReady_s: Number.isFinite(ready_s) ? ready_s : undefined,
    end_s,
    roundCount: Number.isFinite(roundCount) ? roundCount : 0,
    issues,
    brought,
  }
}

/** Rounds from dump to dump and the time they took, from the steady window on, else from the tender's own first full round, else all. */
function wholeRounds(ends: readonly number[], steadyFrom_s: number, turns: number, left_s: number, end_s: number): { from: number; rounds: number; taken_s: number } {
  const steady = ends.findIndex((time_s) => time_s >= steadyFrom_s)
  const last = ends.length - 1
  const from = steady >= 0 && steady < last ? steady : last > 1 ? 1 : 0
  const all = last - from
  const rounds = all >= turns ? all - (all % turns) : all
  const longest_s = ends.reduce((most_s, time_s, k) => (k === 0 ? most_s : Math.max(most_s, time_s - ends[k - 1]!)), 0)
  const tail_s = end_s - ends[last]!
  // Gone, or stopped for longer than any round took: the rest of the run is time without water.
  if (left_s < end_s || tail_s > 1.5 * longest_s) return { from, rounds: all, taken_s: end_s - ends[from]! }
  return { from, rounds, taken_s: ends[from + rounds]! - ends[from]! }
}

/** Positions and bays of the sites a tender may use, in how many rounds they have all had their turn. */
function turnsOf(spec: ShuttleSpec, tender: TenderSpec): number {
  return waysOfTender(tender).reduce((turns, { dumpIndex, fillIndex }) =>
    leastCommonMultiple(turns, leastCommonMultiple(spec.dumps[dumpIndex]!.positionCount, spec.fills[fillIndex]!.bayCount)), 1)
}

function leastCommonMultiple(a: number, b: number): number {
  let [x, y] = [a, b]
  while (y > 0) [x, y] = [y, x % y]
  return (a / x) * b
}
