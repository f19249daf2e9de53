import { issue, requirePositive, type Issue } from '../issue'
import { SECONDS_PER_MINUTE } from '../units'
import { AFTER_READY_S } from './demand-table'
import { draftLimitAt } from './draft-limit'
import { directMost_gpm } from './direct-feed'
import { fedMost_gpm } from './feed-table'
import { flowTest, FLOW_RESOLUTION_GPM, searchFlow, unthrottledBound, type FlowFailure } from './flow-search'
import { hauledCapacity, type HauledCapacity } from './hauled-capacity'
import type { Scenario } from './scenario'
import type { DumpSpec } from './spec'

export type HeldFlow = {
  flow_gpm: number
  /** It is held this long from supply ready. */
  duration_s: number
  supplyReady_s?: number
  /** What keeps it from being higher. `haul`: no more is brought on average. */
  limitedBy: 'haul' | 'brought' | FlowFailure
  haul: HauledCapacity
  /** Where the search began. */
  bound_gpm: number
  /** Lower flows were tried on this grid, the answer refined to `resolution_gpm`. */
  grid_gpm: number
  resolution_gpm: number
  /** A higher flow that is held although a lower one is not; see issue `flow-not-monotone`. */
  higher_gpm?: number
  runCount: number
  issues: Issue[]
}

/**
 * The headline: the greatest constant fire-ground flow from supply ready to the end such
 * that it and every lower flow of the grid
 *
 * - never loses the draft (so is never short),
 * - keeps the reserve, draft limit plus `reserve_s` of flow, in the tanks from the steady
 *   window on (every tender's first full round done), where the tanks can hold it,
 * - is no more than the haul brings on average over whole rounds, less leaks; where tenders choose their dump site,
 *   to all sites together. What hose lays bring counts with the haul, from the moment they stand.
 *
 * Found downwards from the unthrottled bound; see `searchFlow`. To `resolution_gpm`.
 *
 * @param options.afterReady_s how long it must be held; default the spec's, else 7,200
 * @returns the flow, what limits it; issues `flow-not-monotone` (warn), `reserve-not-held`
 *   (warn), `supply-never-ready` (block), `horizon-cut` (note), and those of `hauledCapacity`
 */
export function sustainableFlow(scenario: Scenario, options: { readonly afterReady_s?: number } = {}): HeldFlow {
  const afterReady_s = options.afterReady_s ?? scenario.spec.afterReady_s ?? AFTER_READY_S
  return heldFlow(scenario, afterReady_s, true)
}

/**
 * The greatest constant flow held for a stated time from supply ready, stored water
 * included: the sustainable flow without the haul-average condition. Always shown with its duration.
 *
 * @param duration_s above 0
 * @throws RangeError if the duration is not above 0
 */
export function flowUsingStored(scenario: Scenario, duration_s: number): HeldFlow {
  requirePositive('duration_s', duration_s)
  return heldFlow(scenario, duration_s, false)
}

function heldFlow(scenario: Scenario, afterReady_s: number, livesOnHaul: boolean): HeldFlow {
  const haul = hauledCapacity(scenario, { afterReady_s: Math.max(afterReady_s, scenario.spec.afterReady_s ?? AFTER_READY_S) })
  const haul_gpm = haulBound_gpm(scenario, haul)
  const test = flowTest(scenario, afterReady_s, haul.steadyFrom_s)
  const start_gpm = livesOnHaul ? haul_gpm : highestFlow(scenario, haul, afterReady_s)
  const bound_gpm = start_gpm > 0 && !scenario.tenders.choosesDump ? unthrottledBound(scenario, haul, test, start_gpm, afterReady_s) : start_gpm
  const search = searchFlow(test, bound_gpm)
  const { flow_gpm, grid_gpm, higher_gpm, failing_gpm, stoppedBy } = search
  if (flow_gpm > 0) test(flow_gpm)
  const ready_s = flow_gpm > 0 ? Math.max(...readyTimes(scenario, test.lastState().supplyReady_s)) : Infinity
  const issues = [...haul.issues]
  const names = scenario.spec.dumps.map(({ id }) => id)
  if (higher_gpm !== undefined) issues.push(issue('flow-not-monotone', 'warn', names, { flow_gpm, failing_gpm: failing_gpm ?? flow_gpm, higher_gpm }))
  if (ready_s === Infinity) {
    if (haul.supplyReady_s === undefined) issues.push(issue('supply-never-ready', 'block', names, { horizon_s: scenario.spec.horizon_s }))
  } else if (ready_s + afterReady_s > scenario.spec.horizon_s) {
    issues.push(issue('horizon-cut', 'note', [], { held_s: scenario.spec.horizon_s - ready_s, asked_s: afterReady_s }))
  }
  for (const dump of scenario.spec.dumps) {
    const share_gpm = flow_gpm * dump.demandShare
    const reserve_gal = draftLimitAt(dump, share_gpm) + (share_gpm * scenario.spec.demand.reserve_s) / SECONDS_PER_MINUTE
    if (share_gpm > 0 && reserve_gal > dump.capacity_gal) {
      issues.push(issue('reserve-not-held', 'warn', [dump.id], { flow_gpm: share_gpm, reserve_gal, capacity_gal: dump.capacity_gal }))
    }
  }
  return {
    flow_gpm,
    duration_s: afterReady_s,
    supplyReady_s: ready_s === Infinity ? undefined : ready_s,
    limitedBy: stoppedBy ?? (livesOnHaul && bound_gpm >= haul_gpm - FLOW_RESOLUTION_GPM ? 'haul' : 'brought'),
    haul,
    bound_gpm,
    grid_gpm,
    resolution_gpm: FLOW_RESOLUTION_GPM,
    higher_gpm,
    runCount: test.runCount(),
    issues,
  }
}

/** No flow lives on more than this: what is hauled on average, less leaks, to the site that has least for its share; where tenders choose, to all together. [gpm] */
export const haulBound_gpm = (scenario: Scenario, haul: HauledCapacity): number => (scenario.tenders.choosesDump ? haulOfAll(scenario, haul) : haulOfEach(scenario, haul))

const leakOf = ({ leak_gpm = 0 }: DumpSpec): number => leak_gpm

/** What is hauled to each site, less what leaks there, over its share: the least of all sites. */
function haulOfEach({ spec }: Scenario, haul: HauledCapacity): number {
  return spec.dumps.reduce((least, dump, d) =>
    (dump.demandShare > 0 ? Math.min(least, Math.max(0, haul.byDump_gpm[d]! + fedMost_gpm(spec, d) - leakOf(dump)) / dump.demandShare) : least), Infinity) + directMost_gpm(spec)
}

/** Tenders that choose go where water is drawn, so only the sum is settled; each site still has to hold its share in the run. */
function haulOfAll({ spec }: Scenario, haul: HauledCapacity): number {
  return Math.max(0, haul.hauledCapacity_gpm + spec.dumps.reduce((sum, dump, d) => sum + fedMost_gpm(spec, d) - leakOf(dump), 0)) + directMost_gpm(spec)
}

function readyTimes(scenario: Scenario, supplyReady_s: Float64Array): number[] {
  return scenario.spec.dumps.flatMap(({ demandShare }, d) => (demandShare > 0 ? [supplyReady_s[d]!] : []))
}

/** All water ever brought to a site or stored there, in the time: more cannot flow. */
function highestFlow(scenario: Scenario, haul: HauledCapacity, duration_s: number): number {
  const brought_gal = haul.brought.reduce((most, { sum_gal }) => Math.max(most, sum_gal), 0)
  const share = scenario.spec.dumps.reduce((least, { demandShare }) => (demandShare > 0 ? Math.min(least, demandShare) : least), 1)
  return (brought_gal * SECONDS_PER_MINUTE) / duration_s / share + directMost_gpm(scenario.spec)
}
