import { advance } from './advance'
import { AFTER_READY_S, withDemand, type RunDemand } from './demand-table'
import type { OnEvent } from './event'
import { readRun } from './read-run'
import type { Scenario } from './scenario'
import type { ShuttleRun } from './shuttle-run'
import { begin } from './start'
import type { SimState } from './state'

export type RunOptions = {
  /** `planned`: as the spec says. `open`: dumping never blocked, nothing drawn. A number: that flow throughout. */
  readonly demand?: RunDemand
  /** How long after supply is ready the run lasts. Default: the spec's, else 7,200. */
  readonly afterReady_s?: number
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
