import { requireThat } from '../issue'
import { replanFill, replanPool, syncFill } from './fill-site'
import { setPoolLevel, syncPool } from './pool'
import type { Scenario } from './scenario'
import type { SimState } from './state'

/**
 * A source turns out to hold less: a share of what is left at the clock of a state is not there. What was never there is in no
 * balance.
 *
 * @param f         index of a fill site; where its source is not known to run out nothing happens
 * @param leftShare of what should be left, 0 to 1
 * @param state     changed in place
 * @throws RangeError if there is no such site or the share is not between 0 and 1
 */
export function lowerSource(scenario: Scenario, state: SimState, f: number, leftShare: number): void {
  requireThat(f >= 0 && f < scenario.fills.count, 'f', f, 'the index of a fill site')
  requireThat(leftShare >= 0 && leftShare <= 1, 'leftShare', leftShare, 'from 0 to 1')
  const now_s = state.clock_s[0]!
  const pool = scenario.pools.ofFill[f]!
  if (pool >= 0) {
    syncPool(scenario, state, pool, now_s)
    setPoolLevel(scenario, state, pool, state.pool_gal[pool]! * leftShare)
    replanPool(scenario, state, pool, now_s, undefined)
    return
  }
  syncFill(scenario, state, f, now_s)
  if (state.source_gal[f] === Infinity) return
  state.source_gal[f] = state.source_gal[f]! * leftShare
  replanFill(scenario, state, f, now_s, undefined)
}
