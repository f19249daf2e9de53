import { replanDump, syncDump } from './dump-site'
import { EVENT, type OnEvent } from './event'
import { replanFill, replanPool, syncFill } from './fill-site'
import { syncPool } from './pool'
import type { Scenario } from './scenario'
import type { SimState } from './state'

/** A hose lay stands, or its source is empty: its site gets another flow from now on. */
export function handleFeed(scenario: Scenario, state: SimState, now_s: number, on: OnEvent | undefined): void {
  const { feeds, pools, entities } = scenario
  const step = feeds.steps[state.feedStep[0]!]!
  const { feed } = step
  const d = feeds.dump[feed]!
  const f = feeds.fill[feed]!
  const p = pools.ofFeed[feed]!
  if (p >= 0) syncPool(scenario, state, p, now_s)
  if (d >= 0) syncDump(scenario, state, d, now_s)
  if (f >= 0) syncFill(scenario, state, f, now_s)
  state.feed_gpm[feed] = p >= 0 && state.poolDry[p] === 1 ? pools.lowFeed_gpm[feed]! : step.flow_gpm
  state.feedStep[0] = state.feedStep[0]! + 1
  state.next_s[entities.feeds] = feeds.steps[state.feedStep[0]]?.at_s ?? Infinity
  if (on) on(EVENT['lay-flow'], now_s, -1, feed)
  if (d >= 0) replanDump(scenario, state, d, now_s, on)
  if (f >= 0) replanFill(scenario, state, f, now_s, on)
  if (p >= 0) replanPool(scenario, state, p, now_s, on)
}
