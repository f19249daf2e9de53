import { replanDump, syncDump } from './dump-site'
import { EVENT, type OnEvent } from './event'
import { PUMPER } from './phase'
import { SAME_LEVEL_GAL } from './same-level'
import type { Scenario } from './scenario'
import type { SimState } from './state'

/** The pumper of dump site `d` is set, its booster tank runs empty, or its draft is back. */
export function handlePumper(scenario: Scenario, state: SimState, d: number, now_s: number, on: OnEvent | undefined): void {
  syncDump(scenario, state, d, now_s)
  if (state.pumper[d] === PUMPER.setsUp) {
    state.pumper[d] = PUMPER.waitsForSupply
    state.next_s[scenario.entities.pumpers + d] = Infinity
    if (on) on(EVENT['pumper-set'], now_s, -1, d)
  }
  if (state.boosterOut_gpm[d]! > 0 && state.booster_gal[d]! <= SAME_LEVEL_GAL) {
    state.booster_gal[d] = 0
    if (on) on(EVENT['booster-empty'], now_s, -1, d)
  }
  if (state.pumper[d] === PUMPER.reprimes && state.reprimed_s[d]! <= now_s) {
    state.pumper[d] = PUMPER.draws
    state.reprimed_s[d] = Infinity
    if (on) on(EVENT['draft-back'], now_s, -1, d)
  }
  replanDump(scenario, state, d, now_s, on)
}
