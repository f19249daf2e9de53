import { SECONDS_PER_MINUTE } from '../units'
import { replanDump, SAME_LEVEL_GAL, syncDump } from './dump-site'
import { EVENT, type OnEvent } from './event'
import { offerAt, setDry, setFillRates, syncFill, wantedBy } from './fill-rates'
import { replanFill } from './fill-site'
import { syncFire } from './fire-ground'
import type { Scenario } from './scenario'
import type { SimState } from './state'

/** What is drawn from shared source `p` now: by its lays at their whole flow, by its fill sites as tenders fill. */
function drawnFrom({ pools, fills, feeds }: Scenario, state: SimState, p: number): number {
  let sum_gpm = laysOn({ pools, feeds }, state, p)
  for (let f = 0; f < fills.count; f++) if (pools.ofFill[f] === p) sum_gpm += state.draw_gpm[f]!
  return sum_gpm
}

function laysOn({ pools, feeds }: Pick<Scenario, 'pools' | 'feeds'>, state: SimState, p: number): number {
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
