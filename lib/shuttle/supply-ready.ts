import { EVENT, type OnEvent } from './event'
import { feedInto_gpm } from './feed-rates'
import { PUMPER } from './phase'
import { SAME_LEVEL_GAL } from './same-level'
import type { Scenario } from './scenario'
import { FIRE, type SimState } from './state'

/** One tender is empty, or a hose lay runs into the tanks. */
export const hasCome = (scenario: Scenario, state: SimState, d: number): boolean => state.finished[d]! > 0 || feedInto_gpm(scenario.feeds.dump, state, d) > 0

/** Supply counts as ready with one tender empty, or a lay running, and the reserve reached, or with the tanks full. */
export function isSupplied(scenario: Scenario, state: SimState, d: number, at: number, level_gal: number): boolean {
  if (scenario.dumps.share[d] === 0) return false
  if (level_gal >= scenario.dumps.capacity_gal[d]! - SAME_LEVEL_GAL) return true
  return hasCome(scenario, state, d) && level_gal >= scenario.demand.reserve_gal[at]! - SAME_LEVEL_GAL
}

/** Supply is ready at dump site `d`: its pumper draws, and when all are ready the end of the run is set. */
export function becomeReady(scenario: Scenario, state: SimState, d: number, now_s: number, on: OnEvent | undefined): void {
  const { dumps, demand } = scenario
  state.pumper[d] = PUMPER.draws
  state.supplyReady_s[d] = now_s
  state.lowest_gal[d] = state.level_gal[d]!
  state.lowest_s[d] = now_s
  state.isFireDue[0] = 1
  if (on) on(EVENT['supply-ready'], now_s, -1, d)
  for (let other = 0; other < dumps.count; other++) {
    if (dumps.share[other]! > 0 && state.supplyReady_s[other] === Infinity) return
  }
  state.fire[FIRE.allReady_s] = now_s
  if (demand.afterReady_s !== Infinity) state.end_s[0] = now_s + demand.afterReady_s
  if (on) on(EVENT['all-supply-ready'], now_s, -1, -1)
}
