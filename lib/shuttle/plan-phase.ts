import { stageFactor } from './chance'
import type { Scenario } from './scenario'
import type { SimState } from './state'

/** Sets a tender's phase and when it ends. */
export function planPhase(state: SimState, i: number, phase: number, now_s: number, next_s: number): void {
  state.phase[i] = phase
  state.phaseSince_s[i] = now_s
  planNext(state, i, next_s)
}

/** Sets when a tender's next thing happens; it stays in its phase. */
export function planNext(state: SimState, i: number, next_s: number): void {
  state.next_s[i] = next_s
  const sequence = state.sequence[0]!
  state.rank[i] = sequence
  state.sequence[0] = sequence + 1
}

/** End of a stage of a round, or of a part of it: the planned time with its factor of chance. */
export function stageEnd(scenario: Scenario, now_s: number, planned_s: number, i: number, stage: number, count: number): number {
  const { chance } = scenario
  return now_s + (chance === undefined ? planned_s : planned_s * stageFactor(scenario, chance, i, stage, count))
}
