import { STAGE } from './chance'
import { EVENT, type OnEvent } from './event'
import { PHASE } from './phase'
import { planPhase, stageEnd } from './plan-phase'
import type { Scenario } from './scenario'
import { FREE, type SimState } from './state'

/** Positions and bays open whose people have come; those who wait come in. */
export function openPlaces(scenario: Scenario, state: SimState, now_s: number, on: OnEvent | undefined): void {
  const { slots, dumps, entities } = scenario
  for (let next = slots.late[state.opened[0]!]; next && next.from_s <= now_s; next = slots.late[state.opened[0]!]) {
    const { slot, site } = next
    state.opened[0] = state.opened[0]! + 1
    state.slotTender[slot] = FREE
    const isDump = site < dumps.count
    if (on) on(isDump ? EVENT['position-opens'] : EVENT['bay-opens'], now_s, -1, isDump ? site : site - dumps.count)
    if (state.open[site]) admitNext(scenario, state, site, slot, now_s, on)
  }
  state.next_s[entities.places] = slots.late[state.opened[0]!]?.from_s ?? Infinity
}

/** A dump site or fill site opens: those who wait for it come in. */
export function openSite(scenario: Scenario, state: SimState, site: number, now_s: number, on: OnEvent | undefined): void {
  const { slots, dumps } = scenario
  state.open[site] = 1
  const isDump = site < dumps.count
  if (on) on(isDump ? EVENT['dump-open'] : EVENT['fill-open'], now_s, -1, isDump ? site : site - dumps.count)
  for (let slot = slots.from[site]!; slot < slots.upTo[site]!; slot++) {
    if (state.slotTender[slot] === FREE) admitNext(scenario, state, site, slot, now_s, on)
  }
}

/** Tender `i` is at a site: it takes a free place, or waits for one in the order of arrival. */
export function arrive(scenario: Scenario, state: SimState, i: number, site: number, phase: number, now_s: number, on: OnEvent | undefined): void {
  planPhase(state, i, phase, now_s, Infinity)
  if (state.open[site] && state.waiting[site] === 0) {
    const upTo = scenario.slots.upTo[site]!
    for (let slot = scenario.slots.from[site]!; slot < upTo; slot++) {
      if (state.slotTender[slot] !== FREE) continue
      takeSlot(scenario, state, i, site, slot, now_s, on)
      return
    }
  }
  state.ticket[i] = state.rank[i]!
  state.waiting[site] = state.waiting[site]! + 1
}

/** First come, first served, by the ticket drawn on arrival. */
export function admitNext(scenario: Scenario, state: SimState, site: number, slot: number, now_s: number, on: OnEvent | undefined): void {
  if (state.waiting[site] === 0) return
  const phase = site < scenario.dumps.count ? PHASE.waitsToDump : PHASE.waitsToFill
  let first = -1
  for (let i = 0; i < scenario.tenders.count; i++) {
    if (state.phase[i] !== phase || state.place[i] !== site) continue
    if (first < 0 || state.ticket[i]! < state.ticket[first]!) first = i
  }
  state.waiting[site] = state.waiting[site]! - 1
  takeSlot(scenario, state, first, site, slot, now_s, on)
}

function takeSlot(scenario: Scenario, state: SimState, i: number, site: number, slot: number, now_s: number, on: OnEvent | undefined): void {
  const { tenders, dumps } = scenario
  const waited_s = now_s - state.phaseSince_s[i]!
  state.slotTender[slot] = i
  state.slotSince_s[slot] = now_s
  state.slot[i] = slot
  if (site < dumps.count) {
    state.waitedToDump_s[i] = state.waitedToDump_s[i]! + waited_s
    const end_s = stageEnd(scenario, now_s, tenders.dumpPosition_s[i]!, i, STAGE.dumpPosition, state.rounds[i]!)
    planPhase(state, i, PHASE.takesPosition, now_s, end_s)
    if (on) on(EVENT['takes-position'], now_s, i, site)
  } else {
    state.waitedToFill_s[i] = state.waitedToFill_s[i]! + waited_s
    const end_s = stageEnd(scenario, now_s, tenders.fillPosition_s[i]!, i, STAGE.fillPosition, state.filled[i]!)
    planPhase(state, i, PHASE.takesBay, now_s, end_s)
    if (on) on(EVENT['takes-bay'], now_s, i, site - dumps.count)
  }
}

/** Tender `i` clears its place, and the first who waits comes in. */
export function leaveSlot(scenario: Scenario, state: SimState, i: number, site: number, now_s: number, on: OnEvent | undefined): void {
  const slot = state.slot[i]!
  state.slot[i] = -1
  state.slotTender[slot] = FREE
  state.slotBusy_s[slot] = state.slotBusy_s[slot]! + (now_s - state.slotSince_s[slot]!)
  admitNext(scenario, state, site, slot, now_s, on)
}
