import { SECONDS_PER_MINUTE } from '../units'
import { replanDump, syncDump } from './dump-site'
import { EVENT, type OnEvent } from './event'
import { offerAt, setDry, setFillRates, syncFill, wantedBy } from './fill-rates'
import { syncFire } from './fire-ground'
import { drawnFrom, laysOn, syncPool } from './pool'
import { SAME_LEVEL_GAL } from './same-level'
import type { Scenario } from './scenario'
import type { SimState } from './state'

export { syncFill } from './fill-rates'

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

/**
 * Sets what all draw from shared source `p` from now on, and when it runs dry.
 *
 * While it holds water everybody takes what he takes, a lay its whole flow from the moment it stands. When it has run dry and more is
 * drawn than runs in, each of its lays falls to its part of the inflow and stays there, whatever gathers later; its fill sites share the
 * rest of the inflow as they would draw, and what gathers while nobody fills.
 */
export function replanPool(scenario: Scenario, state: SimState, p: number, now_s: number, on: OnEvent | undefined): void {
  const { pools, fills, entities } = scenario
  syncPool(scenario, state, p, now_s)
  const inflow_gpm = pools.inflow_gpm[p]!
  for (let f = 0; f < fills.count; f++) if (pools.ofFill[f] === p) syncFill(scenario, state, f, now_s)
  const isEmpty = state.pool_gal[p]! <= SAME_LEVEL_GAL
  let lays_gpm = laysOn(scenario, state, p)
  // What is wanted counts from an empty source only.
  let wanted_gpm = isEmpty ? wantedFrom(scenario, state, p) : 0
  if (isEmpty && state.poolDry[p] === 0 && wanted_gpm + lays_gpm > inflow_gpm) {
    runDry(scenario, state, p, now_s, on)
    lays_gpm = laysOn(scenario, state, p)
    wanted_gpm = wantedFrom(scenario, state, p)
  }
  const left_gpm = Math.max(0, inflow_gpm - lays_gpm)
  const isShort = isEmpty && wanted_gpm > left_gpm
  for (let f = 0; f < fills.count; f++) {
    if (pools.ofFill[f] !== p || !state.open[scenario.dumps.count + f]) continue
    const offer = offerAt(scenario, state, f)
    setDry(state, f, isShort && wantedBy(scenario, state, f, offer) > 0, now_s, on)
    setFillRates(scenario, state, f, offer, isShort ? left_gpm / wanted_gpm : 1, now_s)
  }
  const net_gpm = drawnFrom(scenario, state, p) - inflow_gpm
  state.next_s[entities.pools + p] = !isEmpty && net_gpm > 0 ? now_s + (state.pool_gal[p]! / net_gpm) * SECONDS_PER_MINUTE : Infinity
}

function wantedFrom(scenario: Scenario, state: SimState, p: number): number {
  const { pools, fills, dumps } = scenario
  let sum_gpm = 0
  for (let f = 0; f < fills.count; f++) if (pools.ofFill[f] === p && state.open[dumps.count + f]) sum_gpm += wantedBy(scenario, state, f, offerAt(scenario, state, f))
  return sum_gpm
}

/** Each lay on the source falls to its part of the inflow, and what it feeds is planned anew. */
function runDry(scenario: Scenario, state: SimState, p: number, now_s: number, on: OnEvent | undefined): void {
  const { pools, feeds, dumps } = scenario
  state.poolDry[p] = 1
  state.poolDryFrom_s[p] = now_s
  const bit = pools.bit[p]!
  const all = bit >= 0
  if (all) syncFire(scenario, state, now_s)
  const isFed = (d: number): boolean => { for (let j = 0; j < feeds.count; j++) if (pools.ofFeed[j] === p && feeds.dump[j] === d) return true; return false }
  for (let d = 0; d < dumps.count; d++) if (all || isFed(d)) syncDump(scenario, state, d, now_s)
  for (let j = 0; j < feeds.count; j++) {
    if (pools.ofFeed[j] !== p || state.feed_gpm[j] === 0) continue
    const f = feeds.fill[j]!
    if (f >= 0) syncFill(scenario, state, f, now_s)
    state.feed_gpm[j] = pools.lowFeed_gpm[j]!
    if (on) on(EVENT['lay-flow'], now_s, -1, j)
  }
  if (all) {
    state.variant[0] = state.variant[0]! | (1 << bit)
    state.isFireDue[0] = 1
  }
  for (let d = 0; d < dumps.count; d++) if (all || isFed(d)) replanDump(scenario, state, d, now_s, on)
  for (let j = 0; j < feeds.count; j++) {
    const f = feeds.fill[j]!
    if (pools.ofFeed[j] === p && f >= 0 && pools.ofFill[f] !== p) replanFill(scenario, state, f, now_s, on)
  }
}
