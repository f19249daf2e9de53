import { SECONDS_PER_MINUTE } from '../units'
import { advance } from './advance'
import { resetConstantFlow, withDemand } from './demand-table'
import { directMost_gpm } from './direct-feed'
import type { HauledCapacity } from './hauled-capacity'
import type { Scenario } from './scenario'
import { begin } from './start'
import { FIRE, type SimState } from './state'

/** Why a flow cannot be held: supply is not ready before the horizon, the draft is lost, or the reserve is not kept. */
export type FlowFailure = 'not-ready' | 'draft' | 'reserve'

export type FlowTest = {
  /** Undefined: it is held. */
  (flow_gpm: number): FlowFailure | undefined
  runCount: () => number
  /** When each dump site's supply was ready in the last run. */
  lastState: () => SimState
}

export type FlowSearch = {
  flow_gpm: number
  /** What stops the next higher flow; undefined when the bound itself is held. */
  stoppedBy?: FlowFailure
  grid_gpm: number
  /** A higher flow that is held although a lower one is not. */
  higher_gpm?: number
  /** The lowest flow of the grid that is not held below `higher_gpm`. */
  failing_gpm?: number
}

/** Flows closer than this are the same flow. */
export const FLOW_RESOLUTION_GPM = 0.5
const GRID_COUNT = 32

/** Runs one constant flow from dispatch and says whether it is held; the state is used again and again. */
export function flowTest(scenario: Scenario, afterReady_s: number, keepReserveFrom_s: number): FlowTest {
  const probe = withDemand(scenario, 0, { afterReady_s, keepReserveFrom_s, endsAtLoss: true })
  const state = begin(probe)
  let runCount = 0
  const test = (flow_gpm: number): FlowFailure | undefined => {
    resetConstantFlow(scenario.spec, probe.demand, flow_gpm, keepReserveFrom_s)
    begin(probe, state)
    advance(probe, state, scenario.spec.horizon_s)
    runCount++
    for (let d = 0; d < scenario.dumps.count; d++) {
      if (state.losses[d]! > 0) return probe.demand.from_s[state.stage[0]!] === keepReserveFrom_s ? 'reserve' : 'draft'
    }
    return state.fire[FIRE.allReady_s] === Infinity ? 'not-ready' : undefined
  }
  return Object.assign(test, { runCount: () => runCount, lastState: () => state })
}

/**
 * No constant flow above this can be held, whatever the tanks: the water brought by any
 * moment bounds what can have been drawn by then.
 *
 *   min over sites and t of  S(t) / (t − ready) / share
 *
 * with `ready` taken at the highest flow in question, since a lower flow needs a smaller
 * reserve and is ready no later; repeated with the bound found, which only lowers it.
 *
 * @param start_gpm the highest flow in question
 */
export function unthrottledBound(scenario: Scenario, haul: HauledCapacity, test: FlowTest, start_gpm: number, afterReady_s: number): number {
  let bound_gpm = start_gpm
  for (let pass = 0; pass < 3; pass++) {
    test(bound_gpm)
    const { supplyReady_s } = test.lastState()
    let lower_gpm = bound_gpm
    for (const { time_s, dump, sum_gal } of haul.brought) {
      const ready_s = supplyReady_s[dump]!
      const share = scenario.dumps.share[dump]!
      if (ready_s === Infinity || share === 0 || time_s <= ready_s || time_s > ready_s + afterReady_s) continue
      lower_gpm = Math.min(lower_gpm, (sum_gal * SECONDS_PER_MINUTE) / (time_s - ready_s) / share + directMost_gpm(scenario.spec))
    }
    if (lower_gpm >= bound_gpm - FLOW_RESOLUTION_GPM) return lower_gpm
    bound_gpm = lower_gpm
  }
  return bound_gpm
}

/** Round step that divides a bound into 16 to 32 parts or so. */
export function gridFor(bound_gpm: number): number {
  const least = bound_gpm / GRID_COUNT
  const power = 10 ** Math.floor(Math.log10(Math.max(least, 1e-3)))
  const factor = [1, 2, 5, 10].find((step) => step * power >= least) ?? 10
  return factor * power
}

/**
 * The greatest flow up to a bound such that it and every lower flow of the grid is held.
 *
 * Goes down from the bound on the grid to the first flow that is held and refines inside that
 * step; then tries every flow of the grid below. Where one of them fails, the answer lies
 * under the lowest that does, and the higher flow is handed back beside it.
 */
export function searchFlow(test: (flow_gpm: number) => FlowFailure | undefined, bound_gpm: number): FlowSearch {
  const grid_gpm = gridFor(bound_gpm)
  let steps = Math.ceil(bound_gpm / grid_gpm - 1e-9) - 1
  let failing_gpm = Infinity
  let flow_gpm = bound_gpm
  let stoppedBy = bound_gpm > 0 ? test(bound_gpm) : undefined
  let failure = stoppedBy
  while (failure !== undefined) {
    failing_gpm = flow_gpm
    stoppedBy = failure
    flow_gpm = Math.max(0, steps * grid_gpm)
    steps--
    if (flow_gpm === 0) break
    failure = test(flow_gpm)
  }
  if (failing_gpm !== Infinity) [flow_gpm, stoppedBy] = refineFlow(test, flow_gpm, failing_gpm, stoppedBy)
  let lowestFailing: { step: number; by: FlowFailure } | undefined
  for (let step = steps; step >= 1; step--) {
    const by = test(step * grid_gpm)
    if (by !== undefined) lowestFailing = { step, by }
  }
  if (!lowestFailing) return { flow_gpm, stoppedBy, grid_gpm }
  const low_gpm = (lowestFailing.step - 1) * grid_gpm
  const [lower_gpm, lowerBy] = refineFlow(test, low_gpm, lowestFailing.step * grid_gpm, lowestFailing.by)
  return { flow_gpm: lower_gpm, stoppedBy: lowerBy, grid_gpm, higher_gpm: flow_gpm, failing_gpm: lowestFailing.step * grid_gpm }
}

/** Halves one step of the grid between a flow that is held and one that is not. @returns the highest flow that is held, and what stops the next */
export function refineFlow(test: (flow_gpm: number) => FlowFailure | undefined, held_gpm: number, failing_gpm: number, by: FlowFailure | undefined): [number, FlowFailure | undefined] {
  while (failing_gpm - held_gpm > FLOW_RESOLUTION_GPM) {
    const middle_gpm = (held_gpm + failing_gpm) / 2
    const failure = test(middle_gpm)
    if (failure === undefined) held_gpm = middle_gpm
    else [failing_gpm, by] = [middle_gpm, failure]
  }
  return [held_gpm, by]
}
