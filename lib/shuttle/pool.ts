import { SECONDS_PER_MINUTE } from '../units'
import type { Scenario } from './scenario'
import type { SimState } from './state'

/** What is drawn from shared source `p` now: by its lays at their whole flow, by its fill sites as tenders fill. */
export function drawnFrom({ pools, fills, feeds }: Scenario, state: SimState, p: number): number {
  let sum_gpm = laysOn({ pools, feeds }, state, p)
  for (let f = 0; f < fills.count; f++) if (pools.ofFill[f] === p) sum_gpm += state.draw_gpm[f]!
  return sum_gpm
}

/** What lays draw from shared source `p` now. */
export function laysOn({ pools, feeds }: Pick<Scenario, 'pools' | 'feeds'>, state: SimState, p: number): number {
  let sum_gpm = 0
  for (let j = 0; j < feeds.count; j++) if (pools.ofFeed[j] === p) sum_gpm += state.feed_gpm[j]!
  return sum_gpm
}

/** Moves the water of shared source `p` along its present rates up to `now_s`. */
export function syncPool(scenario: Scenario, state: SimState, p: number, now_s: number): void {
  const { pools } = scenario
  const elapsed_s = now_s - state.poolSince_s[p]!
  if (elapsed_s <= 0) return
  state.poolSince_s[p] = now_s
  const level_gal = state.pool_gal[p]! + ((pools.inflow_gpm[p]! - drawnFrom(scenario, state, p)) * elapsed_s) / SECONDS_PER_MINUTE
  setPoolLevel(scenario, state, p, Math.min(pools.usable_gal[p]!, Math.max(0, level_gal)))
}

/** What shared source `p` holds, and with it what each fill site that draws on it reads. */
export function setPoolLevel({ pools, fills }: Pick<Scenario, 'pools' | 'fills'>, state: SimState, p: number, level_gal: number): void {
  state.pool_gal[p] = level_gal
  for (let f = 0; f < fills.count; f++) if (pools.ofFill[f] === p) state.source_gal[f] = level_gal
}
