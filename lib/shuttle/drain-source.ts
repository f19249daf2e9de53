import { requireNotNegative, requireThat } from '../issue'
import { replanFill, syncFill } from './fill-site'
import type { Scenario } from './scenario'
import type { SimState } from './state'

/**
 * A source turns out to hold less: so much is taken from what is left at the clock of a state. What was never there is in no balance.
 *
 * @param f        index of a fill site whose source is known to run out; nothing happens at any other
 * @param less_gal 0 or more; no more than is left is taken
 * @param state    changed in place
 * @throws RangeError if there is no such site or the volume is negative
 */
export function drainSource(scenario: Scenario, state: SimState, f: number, less_gal: number): void {
  requireThat(f >= 0 && f < scenario.fills.count, 'f', f, 'the index of a fill site')
  requireNotNegative('less_gal', less_gal)
  const now_s = state.clock_s[0]!
  syncFill(scenario, state, f, now_s)
  if (state.source_gal[f] === Infinity) return
  state.source_gal[f] = Math.max(0, state.source_gal[f]! - less_gal)
  replanFill(scenario, state, f, now_s, undefined)
}
