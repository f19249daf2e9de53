import { SECONDS_PER_MINUTE } from '../units'
import { replanDump, syncDump } from './dump-site'
import { EVENT, type OnEvent } from './event'
import { ENGINE } from './phase'
import { SAME_LEVEL_GAL } from './same-level'
import type { Scenario } from './scenario'
import { FIRE, rowOf, type SimState } from './state'

/** Adds up what the fire ground got, and how long it went short, up to `now_s`. */
export function syncFire(scenario: Scenario, state: SimState, now_s: number): void {
  const { fire } = state
  const since_s = fire[FIRE.since_s]!
  const elapsed_s = now_s - since_s
  if (elapsed_s <= 0) return
  fire[FIRE.since_s] = now_s
  const elapsed_min = elapsed_s / SECONDS_PER_MINUTE
  fire[FIRE.delivered_gal] = fire[FIRE.delivered_gal]! + fire[FIRE.flow_gpm]! * elapsed_min
  fire[FIRE.engine_gal] = fire[FIRE.engine_gal]! - fire[FIRE.engineOut_gpm]! * elapsed_min
  const { demand, feeds } = scenario
  const direct = rowOf(demand, state) * feeds.count
  for (let j = 0; j < feeds.count; j++) state.fed_gal[j] = state.fed_gal[j]! + demand.direct_gpm[direct + j]! * elapsed_min
  if (since_s < demand.countFrom_s) return
  fire[FIRE.demanded_gal] = fire[FIRE.demanded_gal]! + demand.flow_gpm[state.stage[0]!]! * elapsed_min
  if (fire[FIRE.isShort] === 0) return
  fire[FIRE.shortSinceArrival_s] = fire[FIRE.shortSinceArrival_s]! + elapsed_s
  if (since_s >= fire[FIRE.allReady_s]!) fire[FIRE.shortSinceReady_s] = fire[FIRE.shortSinceReady_s]! + elapsed_s
}

/**
 * Sets who feeds the fire ground from now on: hose lays that lead there what they bring, each dump site its share of the rest
 * while its pumper draws or has its booster tank; until all supply is ready, the first engine's
 * tank whatever the sites leave open. Call `syncFire` first.
 */
function replanFire(scenario: Scenario, state: SimState, now_s: number, on: OnEvent | undefined): void {
  const { demand, dumps, feeds, entities } = scenario
  const { fire } = state
  const asked_gpm = demand.flow_gpm[state.stage[0]!]!
  let flow_gpm = 0
  let isShort = false
  let open_gpm = 0
  if (asked_gpm > 0) {
    const direct = rowOf(demand, state) * feeds.count
    for (let j = 0; j < feeds.count; j++) flow_gpm += demand.direct_gpm[direct + j]!
    const row = rowOf(demand, state) * dumps.count
    for (let d = 0; d < dumps.count; d++) {
      const site_gpm = state.out_gpm[d]! + state.boosterOut_gpm[d]!
      flow_gpm += site_gpm
      if (site_gpm === 0 && demand.siteFlow_gpm[row + d]! > 0) {
        isShort = true
        open_gpm += demand.siteFlow_gpm[row + d]!
      }
    }
  }
  const isEngineUp = state.engine[0] === ENGINE.there && fire[FIRE.allReady_s] === Infinity && fire[FIRE.engine_gal]! > 0
  const engine_gpm = isEngineUp ? open_gpm : 0
  if (engine_gpm > 0) isShort = false
  fire[FIRE.engineOut_gpm] = engine_gpm
  if (state.engine[0] === ENGINE.there) {
    state.next_s[entities.engine] = engine_gpm > 0 ? now_s + (fire[FIRE.engine_gal]! / engine_gpm) * SECONDS_PER_MINUTE : Infinity
  }
  fire[FIRE.isShort] = isShort ? 1 : 0
  flow_gpm += engine_gpm
  if (flow_gpm === fire[FIRE.flow_gpm]) return
  fire[FIRE.flow_gpm] = flow_gpm
  if (fire[FIRE.firstWater_s] === Infinity) {
    fire[FIRE.firstWater_s] = now_s
    if (on) on(EVENT['first-water'], now_s, -1, -1)
  }
  if (on) on(EVENT.flow, now_s, -1, -1)
}

/** Something that feeds the fire ground has changed: its water is moved up to now, and flows anew from here. */
export function takeUpFire(scenario: Scenario, state: SimState, now_s: number, on: OnEvent | undefined): void {
  state.isFireDue[0] = 0
  syncFire(scenario, state, now_s)
  replanFire(scenario, state, now_s, on)
}

/** The fire ground asks for another flow, or a hose lay to it brings another. */
export function handleDemand(scenario: Scenario, state: SimState, now_s: number, on: OnEvent | undefined): void {
  const { demand, dumps, entities } = scenario
  syncFire(scenario, state, now_s)
  const stage = state.stage[0]! + 1
  state.stage[0] = stage
  state.next_s[entities.demand] = stage + 1 < demand.stageCount ? demand.from_s[stage + 1]! : Infinity
  state.isFireDue[0] = 1
  if (on) on(EVENT.demand, now_s, -1, -1)
  for (let d = 0; d < dumps.count; d++) {
    syncDump(scenario, state, d, now_s)
    replanDump(scenario, state, d, now_s, on)
  }
}

/** The first engine arrives, or its tank runs empty. */
export function handleEngine(scenario: Scenario, state: SimState, now_s: number, on: OnEvent | undefined): void {
  syncFire(scenario, state, now_s)
  state.isFireDue[0] = 1
  if (state.engine[0] === ENGINE.coming) {
    state.engine[0] = ENGINE.there
    state.next_s[scenario.entities.engine] = Infinity
    if (on) on(EVENT['engine-arrives'], now_s, -1, -1)
    if (state.fire[FIRE.engine_gal]! > 0) return
  }
  if (state.fire[FIRE.engine_gal]! > SAME_LEVEL_GAL) return
  state.engine[0] = ENGINE.empty
  state.fire[FIRE.engine_gal] = 0
  state.fire[FIRE.engineEmpty_s] = now_s
  state.next_s[scenario.entities.engine] = Infinity
  if (on) on(EVENT['engine-empty'], now_s, -1, -1)
}
