import { SECONDS_PER_MINUTE } from '../units'
import { feedInto_gpm } from './feed-rates'
import { PHASE } from './phase'
import type { Scenario } from './scenario'
import { CLOSED, type SimState } from './state'

/**
 * The way tender `i` takes from the site it is at: the one from which it expects to be back first.
 *
 *   back = max(arrival, a place free, site ready, dump: room for its load) + own stay + way back
 *
 * A place is free when all who are at the site or on their way to it, and get there before, have had their turn: first
 * come first served, planned times, as an officer with a radio would reckon it. Room at a dump site is reckoned at the
 * flow drawn there now. One-lane stretches are left out. Ties go to the first way.
 *
 * @returns the way's row in the table; the only one, at no cost, where the tender does not choose
 */
export function chooseWay(scenario: Scenario, state: SimState, i: number, isLoaded: boolean, now_s: number): number {
  const { tenders, dumps } = scenario
  const { ways } = tenders
  const from = tenders.wayFrom[i]!
  const count = tenders.wayCount[i]!
  if (count === 1) return from
  const here = state.place[i]!
  let best = from
  let least_s = Infinity
  for (let way = from; way < from + count; way++) {
    if (isLoaded ? dumps.count + ways.fill[way]! !== here : ways.dump[way]! !== here) continue
    const done_s = isLoaded
      ? dumpedAt(scenario, state, i, ways.dump[way]!, ways.toDump_s[way]!, now_s) + ways.toFill_s[way]!
      : filledAt(scenario, state, i, ways.fill[way]!, ways.toFill_s[way]!, now_s) + ways.toDump_s[way]!
    if (done_s >= least_s) continue
    least_s = done_s
    best = way
  }
  return best
}

function filledAt(scenario: Scenario, state: SimState, i: number, f: number, travel_s: number, now_s: number): number {
  const { fills, dumps } = scenario
  const site = dumps.count + f
  const places = Math.max(1, Math.min(openPlaces(scenario, state, site), fills.flowing[f]!))
  const free_s = placeFreeAt(scenario, state, i, site, places, now_s + travel_s, now_s)
  return Math.max(now_s + travel_s, fills.ready_s[f]!, free_s) + fillStay_s(scenario, state, i, f, places)
}

function dumpedAt(scenario: Scenario, state: SimState, i: number, d: number, travel_s: number, now_s: number): number {
  const { dumps, tenders, demand } = scenario
  const free_s = placeFreeAt(scenario, state, i, d, Math.max(1, openPlaces(scenario, state, d)), now_s + travel_s, now_s)
  let room_s = 0
  const out_gpm = state.out_gpm[d]!
  if (demand.kind !== 'open' && out_gpm > 0) {
    let coming_gal = tenders.load_gal[i]!
    for (let other = 0; other < tenders.count; other++) if (isAhead(state, other, i, d)) coming_gal += state.load_gal[other]!
    const over_gal = state.level_gal[d]! + state.front_gal[d]! + coming_gal - dumps.capacity_gal[d]! - dumps.front_gal[d]!
    if (over_gal > 0) room_s = (over_gal / out_gpm) * SECONDS_PER_MINUTE
  }
  return Math.max(now_s + travel_s, dumps.ready_s[d]!, free_s, now_s + room_s) + dumpStay_s(scenario, i)
}

/** When a place is free for one who gets there at `arrive_s`. The room it reckons in is left as it was found. */
function placeFreeAt(scenario: Scenario, state: SimState, i: number, site: number, places: number, arrive_s: number, now_s: number): number {
  const { tenders, dumps } = scenario
  const { freeAt_s, isCounted } = state
  freeAt_s.fill(now_s, 0, places)
  for (;;) {
    let next = -1
    let nextComes_s = arrive_s
    for (let other = 0; other < tenders.count; other++) {
      if (isCounted[other] || !isAhead(state, other, i, site)) continue
      const comes_s = comesAt(state, other, now_s)
      if (comes_s > nextComes_s || (comes_s === nextComes_s && next >= 0)) continue
      next = other
      nextComes_s = comes_s
    }
    const first = earliest(freeAt_s, places)
    if (next < 0) {
      const free_s = freeAt_s[first]!
      freeAt_s.fill(0)
      isCounted.fill(0)
      return free_s
    }
    isCounted[next] = 1
    const stay_s = site < dumps.count ? dumpStay_s(scenario, next) : fillStay_s(scenario, state, next, site - dumps.count, places)
    freeAt_s[first] = isInPlace(state.phase[next]!)
      ? doneAt(scenario, state, next, site, stay_s, now_s)
      : Math.max(freeAt_s[first]!, nextComes_s, now_s) + stay_s
  }
}

/** Those in a place come first, then those who wait, in the order in which they came, then those on the road. */
function comesAt(state: SimState, i: number, now_s: number): number {
  const phase = state.phase[i]!
  if (isInPlace(phase)) return -Infinity
  if (phase === PHASE.waitsToDump || phase === PHASE.waitsToFill || phase === PHASE.waitsInBay) return state.phaseSince_s[i]!
  return phase === PHASE.waitsAtRoad ? now_s : state.next_s[i]!
}

function isInPlace(phase: number): boolean {
  return (phase >= PHASE.takesPosition && phase <= PHASE.clearsPosition) || (phase >= PHASE.takesBay && phase <= PHASE.clearsBay)
}

/** When one who has a place will have left it. */
function doneAt(scenario: Scenario, state: SimState, i: number, site: number, stay_s: number, now_s: number): number {
  const { tenders, dumps } = scenario
  const isDump = site < dumps.count
  const clear_s = isDump ? tenders.dumpClear_s[i]! : tenders.fillClear_s[i]!
  const water_s = stay_s - clear_s - (isDump ? tenders.dumpPosition_s[i]! : tenders.fillPosition_s[i]!)
  const loadShare = state.load_gal[i]! / tenders.load_gal[i]!
  switch (state.phase[i]) {
    case PHASE.clearsPosition:
    case PHASE.clearsBay:
      return state.next_s[i]!
    case PHASE.dumps:
      return now_s + loadShare * water_s + clear_s
    case PHASE.fills:
      return now_s + (1 - loadShare) * water_s + clear_s
  }
  return state.next_s[i]! + water_s + clear_s
}

function fillStay_s(scenario: Scenario, state: SimState, i: number, f: number, places: number): number {
  const { fills, tenders } = scenario
  const rate_gpm = Math.min(fills.bayRate_gpm[fills.rateFrom[f]! + places - 1]! + feedInto_gpm(scenario.feeds.fill, state, f) / places, tenders.fillLimit_gpm[i]!)
  return tenders.fillPosition_s[i]! + tenders.fillClear_s[i]! + (tenders.load_gal[i]! / rate_gpm) * SECONDS_PER_MINUTE
}

function dumpStay_s({ tenders }: Scenario, i: number): number {
  return tenders.dumpPosition_s[i]! + tenders.dumpClear_s[i]! + tenders.dumpAlone_s[i]!
}

function isAhead(state: SimState, other: number, i: number, site: number): boolean {
  if (other === i || state.place[other] !== site) return false
  const phase = state.phase[other]!
  return phase !== PHASE.coming && phase !== PHASE.gone && phase !== PHASE.rests
}

function earliest(freeAt_s: Float64Array, places: number): number {
  let first = 0
  for (let k = 1; k < places; k++) if (freeAt_s[k]! < freeAt_s[first]!) first = k
  return first
}

function openPlaces(scenario: Scenario, state: SimState, site: number): number {
  let places = 0
  for (let slot = scenario.slots.from[site]!; slot < scenario.slots.upTo[site]!; slot++) if (state.slotTender[slot] !== CLOSED) places++
  return places
}
