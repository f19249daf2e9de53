import { SECONDS_PER_MINUTE } from '../units'
import { SAME_LEVEL_GAL } from './dump-site'
import type { OnEvent } from './event'
import { offerAt, setDry, setFillRates, wantedBy } from './fill-rates'
import { replanPool } from './pool'
import type { Scenario } from './scenario'
import type { SimState } from './state'

export { feedIntoFill, syncFill } from './fill-rates'

/**
 * Sets the rates at fill site `f` from now on, and when its tenders and its source next
 * change something.
 *
 * Every bay in use takes the rate for that many bays, or the tender's own limit; the last
 * part goes slowly. A hose lay that adds to the site is shared by the bays in use. From an empty source they share what runs in, in the same proportion.
 * Where others draw on its source too, all of them are planned together.
 * Call `syncFill` first.
 */
export function replanFill(scenario: Scenario, state: SimState, f: number, now_s: number, on: OnEvent | undefined): void {
  const { fills, dumps, pools, entities } = scenario
  if (!state.open[dumps.count + f]) return
  const pool = pools.ofFill[f]!
  if (pool >= 0) {
    replanPool(scenario, state, pool, now_s, on)
    return
  }
  const offer = offerAt(scenario, state, f)
  let opening = 1
  if (fills.usable_gal[f]! !== Infinity) {
    const wanted_gpm = wantedBy(scenario, state, f, offer)
    const inflow_gpm = fills.inflow_gpm[f]!
    const isDry = state.source_gal[f]! <= SAME_LEVEL_GAL && wanted_gpm > inflow_gpm
    if (isDry) opening = inflow_gpm / wanted_gpm
    setDry(state, f, isDry, now_s, on)
    state.next_s[entities.fills + f] = !isDry && wanted_gpm > inflow_gpm
      ? now_s + (state.source_gal[f]! / (wanted_gpm - inflow_gpm)) * SECONDS_PER_MINUTE
      : Infinity
  }
  setFillRates(scenario, state, f, offer, opening, now_s)
}
