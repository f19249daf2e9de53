import { SECONDS_PER_MINUTE } from '../units'
import { EVENT, type OnEvent } from './event'
import { addFed, feedInto_gpm } from './feed-rates'
import { PHASE } from './phase'
import type { Scenario } from './scenario'
import type { SimState } from './state'

/** Moves the water at fill site `f` along its present rates up to `now_s`. */
export function syncFill(scenario: Scenario, state: SimState, f: number, now_s: number): void {
  const elapsed_s = now_s - state.fillSince_s[f]!
  if (elapsed_s <= 0) return
  state.fillSince_s[f] = now_s
  const elapsed_min = elapsed_s / SECONDS_PER_MINUTE
  const draw_gpm = state.draw_gpm[f]!
  if (state.filling[f]! > 0) {
    const site = scenario.dumps.count + f
    const upTo = scenario.slots.upTo[site]!
    for (let slot = scenario.slots.from[site]!; slot < upTo; slot++) {
      const i = state.slotTender[slot]!
      if (i < 0 || state.phase[i] !== PHASE.fills) continue
      state.load_gal[i] = state.load_gal[i]! + state.rate_gpm[i]! * elapsed_min
    }
    state.filling_s[f] = state.filling_s[f]! + elapsed_s
    state.drawn_gal[f] = state.drawn_gal[f]! + draw_gpm * elapsed_min
    addFed(scenario.feeds.fill, state, f, elapsed_min)
  }
  const usable_gal = scenario.fills.usable_gal[f]!
  if (state.dry[f]) state.dry_s[f] = state.dry_s[f]! + elapsed_s
  if (usable_gal === Infinity) return
  const source_gal = state.source_gal[f]! + (scenario.fills.inflow_gpm[f]! - draw_gpm) * elapsed_min
  state.source_gal[f] = Math.min(usable_gal, Math.max(0, source_gal))
}

/** What the bays of a site are offered, and which part of it comes from the site's own source. */
export type Offer = { readonly offered_gpm: number; readonly ownShare: number }

/** What each bay in use at fill site `f` is offered now. [gpm] */
export function offerAt(scenario: Scenario, state: SimState, f: number): Offer {
  const { fills } = scenario
  const bays = state.filling[f]!
  const own_gpm = bays > 0 ? fills.bayRate_gpm[fills.rateFrom[f]! + bays - 1]! : 0
  const fed_gpm = bays > 0 ? feedInto_gpm(scenario.feeds.fill, state, f) / bays : 0
  const offered_gpm = own_gpm + fed_gpm
  return { offered_gpm, ownShare: fed_gpm > 0 ? own_gpm / offered_gpm : 1 }
}

/** What fill site `f` would draw from its own source now, of what its bays are offered. */
export function wantedBy(scenario: Scenario, state: SimState, f: number, { offered_gpm, ownShare }: Offer): number {
  const site = scenario.dumps.count + f
  const upTo = scenario.slots.upTo[site]!
  let wanted_gpm = 0
  for (let slot = scenario.slots.from[site]!; slot < upTo; slot++) {
    const i = state.slotTender[slot]!
    if (i >= 0 && state.phase[i] === PHASE.fills) wanted_gpm += rateInto(scenario, state, i, offered_gpm) * ownShare
  }
  return wanted_gpm
}

/**
 * Sets the rates of those filling at site `f`, and when each has its next part.
 *
 * @param opening part of what it would draw that its source gives, 1 but from an empty one
 */
export function setFillRates(scenario: Scenario, state: SimState, f: number, { offered_gpm, ownShare }: Offer, opening: number, now_s: number): void {
  const { tenders, slots, dumps } = scenario
  const site = dumps.count + f
  const upTo = slots.upTo[site]!
  // What a tender takes comes from the site's own pump and from the lay in proportion to what each offers.
  const kept = ownShare === 1 ? opening : ownShare * opening + 1 - ownShare
  let draw_gpm = 0
  let fed = 0
  for (let slot = slots.from[site]!; slot < upTo; slot++) {
    const i = state.slotTender[slot]!
    if (i < 0 || state.phase[i] !== PHASE.fills) continue
    const whole_gpm = rateInto(scenario, state, i, offered_gpm)
    const rate_gpm = whole_gpm * kept
    draw_gpm += ownShare === 1 ? rate_gpm : whole_gpm * ownShare * opening
    fed += whole_gpm * (1 - ownShare)
    if (rate_gpm === state.rate_gpm[i]) continue
    state.rate_gpm[i] = rate_gpm
    const target_gal = state.part[i] === 0 ? tenders.topUpFrom_gal[i]! : tenders.load_gal[i]!
    const left_gal = target_gal - state.load_gal[i]!
    state.next_s[i] = rate_gpm === 0 ? Infinity : left_gal > 0 ? now_s + (left_gal / rate_gpm) * SECONDS_PER_MINUTE : now_s
  }
  state.draw_gpm[f] = draw_gpm
  setFeedRates(scenario, state, f, fed)
}

/** Whether a site has less than it would draw, said once when it changes. */
export function setDry(state: SimState, f: number, isDry: boolean, now_s: number, on: OnEvent | undefined): void {
  if (isDry === (state.dry[f] === 1)) return
  state.dry[f] = isDry ? 1 : 0
  if (isDry && now_s < state.dryFrom_s[f]!) state.dryFrom_s[f] = now_s
  if (on) on(isDry ? EVENT['source-empty'] : EVENT['source-recovers'], now_s, -1, f)
}

function rateInto(scenario: Scenario, state: SimState, i: number, offered_gpm: number): number {
  const { tenders } = scenario
  const limit_gpm = tenders.fillLimit_gpm[i]!
  const rate_gpm = (offered_gpm < limit_gpm ? offered_gpm : limit_gpm) * state.pace[i]!
  return state.part[i] === 0 ? rate_gpm : rate_gpm * tenders.topUpRateShare[i]!
}

function setFeedRates(scenario: Scenario, state: SimState, f: number, taken_gpm: number): void {
  const { feeds } = scenario
  if (feeds.count === 0) return
  const whole_gpm = feedInto_gpm(scenario.feeds.fill, state, f)
  for (let j = 0; j < feeds.count; j++) if (feeds.fill[j] === f) state.feedRate_gpm[j] = whole_gpm > 0 ? (taken_gpm * state.feed_gpm[j]!) / whole_gpm : 0
}
