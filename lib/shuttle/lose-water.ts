import { requireThat } from '../issue'
import { replanDump, syncDump } from './dump-site'
import { takeUpFire } from './fire-ground'
import type { Scenario } from './scenario'
import type { SimState } from './state'

/**
 * Water in the tanks of a dump site is lost at the clock of a state: a tank tips, a wall gives way. It counts as spilled.
 *
 * @param d     index of the dump site
 * @param share of what stands in its tanks, those in front too, 0 to 1
 * @param state changed in place
 * @throws RangeError if there is no such site or the share is not between 0 and 1
 */
export function loseWater(scenario: Scenario, state: SimState, d: number, share: number): void {
  requireThat(d >= 0 && d < scenario.dumps.count, 'd', d, 'the index of a dump site')
  requireThat(share >= 0 && share <= 1, 'share', share, 'from 0 to 1')
  const now_s = state.clock_s[0]!
  syncDump(scenario, state, d, now_s)
  for (const tank of [state.level_gal, state.front_gal]) {
    const lost_gal = tank[d]! * share
    tank[d] = tank[d]! - lost_gal
    state.spilled_gal[d] = state.spilled_gal[d]! + lost_gal
  }
  replanDump(scenario, state, d, now_s, undefined)
  if (state.isFireDue[0] !== 0) takeUpFire(scenario, state, now_s, undefined)
}
