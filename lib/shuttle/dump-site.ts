import { SECONDS_PER_MINUTE } from '../units'
import { EVENT, type OnEvent } from './event'
import { addFed, feedInto_gpm, setFeedShare } from './feed-rates'
import { PHASE, PUMPER } from './phase'
import { SAME_LEVEL_GAL } from './same-level'
import type { Scenario } from './scenario'
import { rowOf, type SimState } from './state'
import { becomeReady, hasCome, isSupplied } from './supply-ready'

/** Moves the water at dump site `d` along its present rates up to `now_s`. */
export function syncDump(scenario: Scenario, state: SimState, d: number, now_s: number): void {
  const elapsed_s = now_s - state.dumpSince_s[d]!
  if (elapsed_s <= 0) return
  state.dumpSince_s[d] = now_s
  const elapsed_min = elapsed_s / SECONDS_PER_MINUTE
  const in_gpm = state.in_gpm[d]!
  if (in_gpm > 0) {
    const upTo = scenario.slots.upTo[d]!
    for (let slot = scenario.slots.from[d]!; slot < upTo; slot++) {
      const i = state.slotTender[slot]!
      if (i < 0 || state.phase[i] !== PHASE.dumps) continue
      const moved_gal = state.rate_gpm[i]! * elapsed_min
      state.load_gal[i] = state.load_gal[i]! - moved_gal
      state.given_gal[i] = state.given_gal[i]! + moved_gal
    }
    state.received_gal[d] = state.received_gal[d]! + in_gpm * elapsed_min
    addFed(scenario.feeds.dump, state, d, elapsed_min)
  }
  const out_gpm = state.out_gpm[d]!
  const enter_gpm = state.enter_gpm[d]!
  const leak_gpm = state.leak_gpm[d]!
  const level_gal = state.level_gal[d]! + (enter_gpm - out_gpm - leak_gpm) * elapsed_min
  state.level_gal[d] = level_gal
  if (enter_gpm !== in_gpm) state.front_gal[d] = state.front_gal[d]! + (in_gpm - enter_gpm) * elapsed_min
  if (leak_gpm > 0) state.spilled_gal[d] = state.spilled_gal[d]! + leak_gpm * elapsed_min
  state.pumped_gal[d] = state.pumped_gal[d]! + out_gpm * elapsed_min
  if (state.full[d]) state.heldBack_s[d] = state.heldBack_s[d]! + elapsed_s
  if (state.spill_gpm[d]! > 0) state.spilled_gal[d] = state.spilled_gal[d]! + state.spill_gpm[d]! * elapsed_min
  const pumper = state.pumper[d]!
  if (pumper < PUMPER.draws) return
  if (level_gal < state.lowest_gal[d]!) {
    state.lowest_gal[d] = level_gal
    state.lowest_s[d] = now_s
  }
  const booster_gpm = state.boosterOut_gpm[d]!
  if (out_gpm + booster_gpm > 0) state.pumping_s[d] = state.pumping_s[d]! + elapsed_s
  if (pumper === PUMPER.draws) return
  state.lost_s[d] = state.lost_s[d]! + elapsed_s
  state.booster_gal[d] = state.booster_gal[d]! - booster_gpm * elapsed_min
}

/**
 * Sets the rates at dump site `d` from now on, and when its level or its pumper next
 * changes something.
 *
 * With tanks in front, tenders dump into those, and water goes over to the ones drafted from at
 * the transfer rate: no more than is dumped once the front is empty, no more than is drawn once the rest is full.
 * A full tank takes water at the rate it is drawn and no more; those dumping, and hose lays that run in, then give
 * way alike, each at the same part of its own rate. A draft is lost when the level stands at the limit
 * and falls, and is sought again once the level has reached the restart volume.
 * Call `syncDump` first.
 */
export function replanDump(scenario: Scenario, state: SimState, d: number, now_s: number, on: OnEvent | undefined): void {
  if (!state.open[d]) return
  const { demand, tenders, slots, dumps, entities } = scenario
  const at = rowOf(demand, state) * dumps.count + d
  const from = slots.from[d]!
  const upTo = slots.upTo[d]!
  let wanted_gpm = 0
  let spill_gpm = 0
  for (let slot = from; slot < upTo; slot++) {
    const i = state.slotTender[slot]!
    if (i < 0 || state.phase[i] !== PHASE.dumps) continue
    const rate_gpm = tenders.dumpRate_gpm[tenders.partFrom[i]! + state.part[i]!]! * state.pace[i]!
    const kept_gpm = rate_gpm * tenders.keptShare[i]!
    wanted_gpm += kept_gpm
    spill_gpm += rate_gpm - kept_gpm
  }

  const fed_gpm = feedInto_gpm(scenario.feeds.dump, state, d)
  wanted_gpm += fed_gpm

  const target_gal = state.target_gal[d]!
  let level_gal = state.level_gal[d]!
  if (level_gal !== target_gal && Math.abs(level_gal - target_gal) < SAME_LEVEL_GAL) {
    level_gal = target_gal
    state.level_gal[d] = level_gal
  }

  const isOpen = demand.kind === 'open'
  const given_gpm = wanted_gpm
  if (wanted_gpm > dumps.intakeLimit_gpm[d]!) wanted_gpm = dumps.intakeLimit_gpm[d]!
  const front_gal = isOpen ? 0 : dumps.front_gal[d]!
  let enter_gpm = wanted_gpm
  if (front_gal > 0) {
    const level = state.front_gal[d]!
    if (level !== 0 && level < SAME_LEVEL_GAL) state.front_gal[d] = 0
    else if (level > front_gal - SAME_LEVEL_GAL) state.front_gal[d] = front_gal
    enter_gpm = state.front_gal[d] === 0 ? Math.min(wanted_gpm, dumps.transfer_gpm[d]!) : dumps.transfer_gpm[d]!
  }
  const leak_gpm = isOpen ? 0 : dumps.leak_gpm[d]!

  const flow_gpm = demand.siteFlow_gpm[at]!
  const limit_gal = demand.limit_gal[at]!
  if (state.pumper[d] === PUMPER.waitsForSupply && isSupplied(scenario, state, d, at, level_gal)) becomeReady(scenario, state, d, now_s, on)
  if (state.pumper[d] === PUMPER.lost && level_gal >= demand.restart_gal[at]! - SAME_LEVEL_GAL) {
    state.pumper[d] = PUMPER.reprimes
    state.reprimed_s[d] = now_s + dumps.reprime_s[d]!
    if (on) on(EVENT.reprime, now_s, -1, d)
  }
  let out_gpm = state.pumper[d] === PUMPER.draws ? flow_gpm : 0
  if (out_gpm > 0 && (level_gal < limit_gal - SAME_LEVEL_GAL || (level_gal <= limit_gal + SAME_LEVEL_GAL && enter_gpm < out_gpm + leak_gpm))) {
    state.pumper[d] = PUMPER.lost
    state.losses[d] = state.losses[d]! + 1
    out_gpm = 0
    if (demand.endsAtLoss) state.end_s[0] = now_s
    if (on) on(EVENT['draft-lost'], now_s, -1, d)
  }
  const pumper = state.pumper[d]!
  const booster_gpm = pumper >= PUMPER.lost && state.booster_gal[d]! > 0 ? flow_gpm : 0
  if (out_gpm !== state.out_gpm[d] || booster_gpm !== state.boosterOut_gpm[d]) {
    state.out_gpm[d] = out_gpm
    state.boosterOut_gpm[d] = booster_gpm
    state.isFireDue[0] = 1
  }
  if (pumper >= PUMPER.draws) {
    const boosterEnd_s = booster_gpm > 0 ? now_s + (state.booster_gal[d]! / booster_gpm) * SECONDS_PER_MINUTE : Infinity
    state.next_s[entities.pumpers + d] = Math.min(boosterEnd_s, state.reprimed_s[d]!)
  }

  const leaks_gpm = level_gal <= SAME_LEVEL_GAL && enter_gpm < out_gpm + leak_gpm ? Math.min(leak_gpm, enter_gpm) : leak_gpm
  const taken_gpm = out_gpm + leaks_gpm
  const isBehindFull = level_gal >= demand.lip_gal[d]! - SAME_LEVEL_GAL && enter_gpm > taken_gpm
  if (isBehindFull) enter_gpm = taken_gpm
  const isFull = front_gal === 0 ? isBehindFull : state.front_gal[d] === front_gal && wanted_gpm > enter_gpm
  if (isFull !== (state.full[d] === 1)) {
    state.full[d] = isFull ? 1 : 0
    if (on) on(isFull ? EVENT['tank-full'] : EVENT['tank-takes-all'], now_s, -1, d)
  }
  const in_gpm = isFull ? enter_gpm : wanted_gpm
  const opening = in_gpm === given_gpm ? 1 : in_gpm / given_gpm
  state.in_gpm[d] = in_gpm
  state.enter_gpm[d] = enter_gpm
  state.leak_gpm[d] = leaks_gpm
  state.spill_gpm[d] = spill_gpm * opening
  if (given_gpm > 0) planDumpers(scenario, state, from, upTo, opening, now_s)
  if (scenario.feeds.count > 0) setFeedShare(scenario.feeds.dump, state, d, opening)
  planLevel(scenario, state, d, at, enter_gpm - taken_gpm, now_s)
  if (front_gal > 0) planFront(scenario, state, d, in_gpm - enter_gpm, now_s)
}

/** The front runs full or empty: the same entity as the level behind, whichever comes first. */
function planFront(scenario: Scenario, state: SimState, d: number, net_gpm: number, now_s: number): void {
  if (net_gpm === 0) return
  const target_gal = net_gpm > 0 ? scenario.dumps.front_gal[d]! : 0
  const at_s = now_s + Math.max(0, (target_gal - state.front_gal[d]!) / net_gpm) * SECONDS_PER_MINUTE
  const entity = scenario.entities.dumps + d
  if (at_s < state.next_s[entity]!) state.next_s[entity] = at_s
}

function planDumpers(scenario: Scenario, state: SimState, from: number, upTo: number, opening: number, now_s: number): void {
  const { tenders } = scenario
  for (let slot = from; slot < upTo; slot++) {
    const i = state.slotTender[slot]!
    if (i < 0 || state.phase[i] !== PHASE.dumps) continue
    const part = state.part[i]!
    const rate_gpm = tenders.dumpRate_gpm[tenders.partFrom[i]! + part]! * state.pace[i]! * opening
    if (rate_gpm === state.rate_gpm[i]) continue
    state.rate_gpm[i] = rate_gpm
    if (rate_gpm === 0) {
      state.next_s[i] = Infinity
      continue
    }
    const partEnd_gal = tenders.load_gal[i]! * (1 - (part + 1) / tenders.partCount[i]!)
    const left_gal = state.load_gal[i]! - partEnd_gal
    state.next_s[i] = left_gal > 0 ? now_s + (left_gal / rate_gpm) * SECONDS_PER_MINUTE : now_s
  }
}

function planLevel(scenario: Scenario, state: SimState, d: number, at: number, net_gpm: number, now_s: number): void {
  const { demand, dumps, entities } = scenario
  const level_gal = state.level_gal[d]!
  let target_gal = Infinity
  if (net_gpm > 0) {
    target_gal = demand.lip_gal[d]!
    if (state.pumper[d] === PUMPER.waitsForSupply) {
      const reserve_gal = hasCome(scenario, state, d) ? demand.reserve_gal[at]! : Infinity
      const ready_gal = Math.min(reserve_gal, dumps.capacity_gal[d]!)
      if (level_gal < ready_gal) target_gal = Math.min(target_gal, ready_gal)
    } else if (state.pumper[d] === PUMPER.lost) {
      target_gal = Math.min(target_gal, demand.restart_gal[at]!)
    }
  } else if (net_gpm < 0) {
    target_gal = state.out_gpm[d]! > 0 ? demand.limit_gal[at]! : 0
  }
  state.target_gal[d] = target_gal
  state.next_s[entities.dumps + d] = target_gal === Infinity ? Infinity
    : now_s + Math.max(0, (target_gal - level_gal) / net_gpm) * SECONDS_PER_MINUTE
}
