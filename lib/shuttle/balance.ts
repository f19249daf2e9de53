import { settle } from './advance'
import { PHASE } from './phase'
import type { Scenario } from './scenario'
import { FIRE, type SimState } from './state'
import { fork } from './state-layout'

/** Where all the water is: initial + drawn = delivered + stored + in transit + spilled, and what rounding left over. */
export type Balance = {
  /** Aboard tenders, first engine and pumpers at dispatch; what a later decision brought, less what it took away. */
  initial_gal: number
  /** Drawn from the sources, by hose lays too. */
  drawn_gal: number
  /** Sent to the fire ground. */
  delivered_gal: number
  /** In portable tanks and in the tanks of the first engine and the pumpers. */
  stored_gal: number
  inTransit_gal: number
  spilled_gal: number
  error_gal: number
}

/** The balance at the clock of a state, which is left as it is. */
export function balanceOf(scenario: Scenario, state: SimState): Balance {
  const now = fork(state)
  settle(scenario, now)
  return settledBalance(scenario, now)
}

/** The balance of a state whose water has been moved up to its clock. */
export function settledBalance(scenario: Scenario, state: SimState): Balance {
  const sum = (values: Float64Array) => values.reduce((total, value) => total + value, 0)
  const initial_gal = state.fire[FIRE.initial_gal]!
  const drawn_gal = sum(state.drawn_gal) + sum(state.fed_gal)
  const delivered_gal = state.fire[FIRE.delivered_gal]!
  const stored_gal = sum(state.level_gal) + sum(state.front_gal) + sum(state.booster_gal) + state.fire[FIRE.engine_gal]!
  const spilled_gal = sum(state.spilled_gal)
  let inTransit_gal = 0
  for (let i = 0; i < scenario.tenders.count; i++) {
    if (state.phase[i] !== PHASE.gone) inTransit_gal += state.load_gal[i]!
  }
  const error_gal = initial_gal + drawn_gal - delivered_gal - stored_gal - inTransit_gal - spilled_gal
  return { initial_gal, drawn_gal, delivered_gal, stored_gal, inTransit_gal, spilled_gal, error_gal }
}
