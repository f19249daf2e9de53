import { fillSiteFactor, STAGE, stageFactor } from './chance'
import { goOn, setOff } from './drive'
import { replanDump, syncDump } from './dump-site'
import { EVENT, type OnEvent } from './event'
import { replanFill, syncFill } from './fill-site'
import { PHASE } from './phase'
import { planPhase, stageEnd } from './plan-phase'
import type { Scenario } from './scenario'
import { FREE, type SimState } from './state'

/** The next thing that tender `i` was about to do happens now. */
export function handleTender(scenario: Scenario, state: SimState, i: number, now_s: number, on: OnEvent | undefined): void {
  const dumpCount = scenario.dumps.count
  switch (state.phase[i]) {
    case PHASE.coming:
      state.restedAt_s[i] = now_s
      if (on) on(EVENT['arrives-at-dump'], now_s, i, state.place[i]!)
      arrive(scenario, state, i, state.place[i]!, PHASE.waitsToDump, now_s, on)
      return
    case PHASE.drivesToDump:
      if (scenario.laneCount > 0 && goOn(scenario, state, i, now_s, on)) return
      if (on) on(EVENT['arrives-at-dump'], now_s, i, state.place[i]!)
      arrive(scenario, state, i, state.place[i]!, PHASE.waitsToDump, now_s, on)
      return
    case PHASE.takesPosition:
      startDump(scenario, state, i, now_s, on)
      return
    case PHASE.dumps:
      endPart(scenario, state, i, now_s, on)
      return
    case PHASE.clearsPosition:
      leaveDump(scenario, state, i, now_s, on)
      return
    case PHASE.drivesToFill:
      if (scenario.laneCount > 0 && goOn(scenario, state, i, now_s, on)) return
      if (on) on(EVENT['arrives-at-fill'], now_s, i, state.place[i]! - dumpCount)
      arrive(scenario, state, i, state.place[i]!, PHASE.waitsToFill, now_s, on)
      return
    case PHASE.takesBay:
      startFill(scenario, state, i, now_s, on)
      return
    case PHASE.fills:
      if (state.part[i] === 0) topUp(scenario, state, i, now_s, on)
      else endFill(scenario, state, i, now_s, on)
      return
    case PHASE.clearsBay:
      leaveFill(scenario, state, i, now_s, on)
      return
    case PHASE.rests:
      state.restedAt_s[i] = now_s
      if (on) on(EVENT['ends-rest'], now_s, i, state.place[i]!)
      setOff(scenario, state, i, false, now_s)
      return
  }
}

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

function arrive(scenario: Scenario, state: SimState, i: number, site: number, phase: number, now_s: number, on: OnEvent | undefined): void {
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

function leaveSlot(scenario: Scenario, state: SimState, i: number, site: number, now_s: number, on: OnEvent | undefined): void {
  const slot = state.slot[i]!
  state.slot[i] = -1
  state.slotTender[slot] = FREE
  state.slotBusy_s[slot] = state.slotBusy_s[slot]! + (now_s - state.slotSince_s[slot]!)
  admitNext(scenario, state, site, slot, now_s, on)
}

function startDump(scenario: Scenario, state: SimState, i: number, now_s: number, on: OnEvent | undefined): void {
  const d = state.place[i]!
  const { chance } = scenario
  syncDump(scenario, state, d, now_s)
  planPhase(state, i, PHASE.dumps, now_s, Infinity)
  state.part[i] = 0
  state.rate_gpm[i] = -1
  if (chance !== undefined) state.pace[i] = 1 / stageFactor(scenario, chance, i, STAGE.dump, state.rounds[i]!)
  if (on) on(EVENT['starts-dump'], now_s, i, d)
  replanDump(scenario, state, d, now_s, on)
}

function endPart(scenario: Scenario, state: SimState, i: number, now_s: number, on: OnEvent | undefined): void {
  const { tenders } = scenario
  const d = state.place[i]!
  syncDump(scenario, state, d, now_s)
  const part = state.part[i]! + 1
  if (part < tenders.partCount[i]!) {
    state.part[i] = part
    state.rate_gpm[i] = -1
    replanDump(scenario, state, d, now_s, on)
    return
  }
  state.load_gal[i] = 0
  state.rate_gpm[i] = 0
  const count = state.rounds[i]!
  state.rounds[i] = count + 1
  state.finished[d] = state.finished[d]! + 1
  planPhase(state, i, PHASE.clearsPosition, now_s, stageEnd(scenario, now_s, tenders.dumpClear_s[i]!, i, STAGE.dumpClear, count))
  if (on) on(EVENT['ends-dump'], now_s, i, d)
  replanDump(scenario, state, d, now_s, on)
}

function leaveDump(scenario: Scenario, state: SimState, i: number, now_s: number, on: OnEvent | undefined): void {
  const { tenders } = scenario
  const d = state.place[i]!
  const dumped_s = state.phaseSince_s[i]!
  if (dumped_s >= tenders.withdraw_s[i]!) {
    planPhase(state, i, PHASE.gone, now_s, Infinity)
    state.left_s[i] = now_s
    if (on) on(EVENT.withdraws, now_s, i, d)
  } else if (dumped_s - state.restedAt_s[i]! >= tenders.restAfter_s[i]!) {
    planPhase(state, i, PHASE.rests, now_s, now_s + tenders.rest_s[i]!)
    if (on) on(EVENT.rests, now_s, i, d)
  } else {
    setOff(scenario, state, i, false, now_s)
    if (on) on(EVENT['leaves-dump'], now_s, i, d)
  }
  leaveSlot(scenario, state, i, d, now_s, on)
}

/** Hooked up: it fills, or stands ready until it is its turn. */
function startFill(scenario: Scenario, state: SimState, i: number, now_s: number, on: OnEvent | undefined): void {
  const f = state.place[i]! - scenario.dumps.count
  if (state.filling[f]! < scenario.fills.flowing[f]!) {
    openBay(scenario, state, i, f, now_s, on)
    return
  }
  planPhase(state, i, PHASE.waitsInBay, now_s, Infinity)
  state.ticket[i] = state.rank[i]!
  if (on) on(EVENT['waits-in-bay'], now_s, i, f)
}

/** Of those that stand hooked up the first begins, where bays may flow. */
export function openNextBay(scenario: Scenario, state: SimState, f: number, now_s: number, on: OnEvent | undefined): void {
  const site = scenario.dumps.count + f
  while (state.filling[f]! < scenario.fills.flowing[f]!) {
    let first = -1
    for (let slot = scenario.slots.from[site]!; slot < scenario.slots.upTo[site]!; slot++) {
      const i = state.slotTender[slot]!
      if (i >= 0 && state.phase[i] === PHASE.waitsInBay && (first < 0 || state.ticket[i]! < state.ticket[first]!)) first = i
    }
    if (first < 0) return
    state.waitedToFill_s[first] = state.waitedToFill_s[first]! + (now_s - state.phaseSince_s[first]!)
    openBay(scenario, state, first, f, now_s, on)
  }
}

function openBay(scenario: Scenario, state: SimState, i: number, f: number, now_s: number, on: OnEvent | undefined): void {
  const { chance, tenders } = scenario
  syncFill(scenario, state, f, now_s)
  planPhase(state, i, PHASE.fills, now_s, Infinity)
  state.part[i] = state.load_gal[i]! < tenders.topUpFrom_gal[i]! ? 0 : 1
  state.rate_gpm[i] = -1
  state.filling[f] = state.filling[f]! + 1
  if (chance !== undefined) {
    const count = state.filled[i]!
    state.pace[i] = 1 / (stageFactor(scenario, chance, i, STAGE.fill, count) * fillSiteFactor(scenario, chance, f, i, count))
  }
  if (on) on(EVENT['starts-fill'], now_s, i, f)
  replanFill(scenario, state, f, now_s, on)
}

function topUp(scenario: Scenario, state: SimState, i: number, now_s: number, on: OnEvent | undefined): void {
  const { tenders } = scenario
  if (tenders.topUpFrom_gal[i]! >= tenders.load_gal[i]!) {
    endFill(scenario, state, i, now_s, on)
    return
  }
  const f = state.place[i]! - scenario.dumps.count
  syncFill(scenario, state, f, now_s)
  state.part[i] = 1
  state.rate_gpm[i] = -1
  if (on) on(EVENT['tops-up'], now_s, i, f)
  replanFill(scenario, state, f, now_s, on)
}

function endFill(scenario: Scenario, state: SimState, i: number, now_s: number, on: OnEvent | undefined): void {
  const { tenders } = scenario
  const f = state.place[i]! - scenario.dumps.count
  syncFill(scenario, state, f, now_s)
  state.load_gal[i] = tenders.load_gal[i]!
  state.rate_gpm[i] = 0
  state.filling[f] = state.filling[f]! - 1
  const count = state.filled[i]!
  state.filled[i] = count + 1
  planPhase(state, i, PHASE.clearsBay, now_s, stageEnd(scenario, now_s, tenders.fillClear_s[i]!, i, STAGE.fillClear, count))
  if (on) on(EVENT['ends-fill'], now_s, i, f)
  replanFill(scenario, state, f, now_s, on)
  openNextBay(scenario, state, f, now_s, on)
}

function leaveFill(scenario: Scenario, state: SimState, i: number, now_s: number, on: OnEvent | undefined): void {
  const site = state.place[i]!
  setOff(scenario, state, i, true, now_s)
  if (on) on(EVENT['leaves-fill'], now_s, i, site - scenario.dumps.count)
  leaveSlot(scenario, state, i, site, now_s, on)
}
