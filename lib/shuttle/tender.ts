import { fillSiteFactor, STAGE, stageFactor } from './chance'
import { replanDump, syncDump } from './dump-site'
import { EVENT, type OnEvent } from './event'
import { replanFill, syncFill } from './fill-site'
import { PHASE } from './phase'
import type { Scenario } from './scenario'
import type { SimState } from './state'

/** The next thing that tender `i` was about to do happens now. */
export function handleTender(scenario: Scenario, state: SimState, i: number, now_s: number, on: OnEvent | undefined): void {
  const dumpCount = scenario.dumps.count
  switch (state.phase[i]) {
    case PHASE.coming:
    case PHASE.drivesToDump:
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
  }
}

/** A dump site or fill site opens: those who wait for it come in. */
export function openSite(scenario: Scenario, state: SimState, site: number, now_s: number, on: OnEvent | undefined): void {
  const { slots, dumps } = scenario
  state.open[site] = 1
  const isDump = site < dumps.count
  if (on) on(isDump ? EVENT['dump-open'] : EVENT['fill-open'], now_s, -1, isDump ? site : site - dumps.count)
  for (let slot = slots.from[site]!; slot < slots.upTo[site]!; slot++) {
    if (state.slotTender[slot]! < 0) admitNext(scenario, state, site, slot, now_s, on)
  }
}

/** Sets a tender's phase and when it ends. */
function plan(state: SimState, i: number, phase: number, now_s: number, next_s: number): void {
  state.phase[i] = phase
  state.phaseSince_s[i] = now_s
  state.next_s[i] = next_s
  const sequence = state.sequence[0]!
  state.rank[i] = sequence
  state.sequence[0] = sequence + 1
}

function stageEnd(scenario: Scenario, now_s: number, planned_s: number, i: number, stage: number, count: number): number {
  const { chance } = scenario
  return now_s + (chance === undefined ? planned_s : planned_s * stageFactor(scenario, chance, i, stage, count))
}

function arrive(scenario: Scenario, state: SimState, i: number, site: number, phase: number, now_s: number, on: OnEvent | undefined): void {
  plan(state, i, phase, now_s, Infinity)
  if (state.open[site] && state.waiting[site] === 0) {
    const upTo = scenario.slots.upTo[site]!
    for (let slot = scenario.slots.from[site]!; slot < upTo; slot++) {
      if (state.slotTender[slot]! >= 0) continue
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
    plan(state, i, PHASE.takesPosition, now_s, end_s)
    if (on) on(EVENT['takes-position'], now_s, i, site)
  } else {
    state.waitedToFill_s[i] = state.waitedToFill_s[i]! + waited_s
    const end_s = stageEnd(scenario, now_s, tenders.fillPosition_s[i]!, i, STAGE.fillPosition, state.filled[i]!)
    plan(state, i, PHASE.takesBay, now_s, end_s)
    if (on) on(EVENT['takes-bay'], now_s, i, site - dumps.count)
  }
}

function leaveSlot(scenario: Scenario, state: SimState, i: number, site: number, now_s: number, on: OnEvent | undefined): void {
  const slot = state.slot[i]!
  state.slot[i] = -1
  state.slotTender[slot] = -1
  state.slotBusy_s[slot] = state.slotBusy_s[slot]! + (now_s - state.slotSince_s[slot]!)
  admitNext(scenario, state, site, slot, now_s, on)
}

function startDump(scenario: Scenario, state: SimState, i: number, now_s: number, on: OnEvent | undefined): void {
  const d = state.place[i]!
  const { chance } = scenario
  syncDump(scenario, state, d, now_s)
  plan(state, i, PHASE.dumps, now_s, Infinity)
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
  plan(state, i, PHASE.clearsPosition, now_s, stageEnd(scenario, now_s, tenders.dumpClear_s[i]!, i, STAGE.dumpClear, count))
  if (on) on(EVENT['ends-dump'], now_s, i, d)
  replanDump(scenario, state, d, now_s, on)
}

function leaveDump(scenario: Scenario, state: SimState, i: number, now_s: number, on: OnEvent | undefined): void {
  const { tenders } = scenario
  const d = state.place[i]!
  const dumped_s = state.phaseSince_s[i]!
  if (dumped_s >= tenders.withdraw_s[i]!) {
    plan(state, i, PHASE.gone, now_s, Infinity)
    state.left_s[i] = now_s
    if (on) on(EVENT.withdraws, now_s, i, d)
  } else {
    state.place[i] = scenario.dumps.count + tenders.fill[i]!
    plan(state, i, PHASE.drivesToFill, now_s, stageEnd(scenario, now_s, tenders.toFill_s[i]!, i, STAGE.toFill, state.rounds[i]!))
    if (on) on(EVENT['leaves-dump'], now_s, i, d)
  }
  leaveSlot(scenario, state, i, d, now_s, on)
}

function startFill(scenario: Scenario, state: SimState, i: number, now_s: number, on: OnEvent | undefined): void {
  const { chance, tenders } = scenario
  const f = state.place[i]! - scenario.dumps.count
  syncFill(scenario, state, f, now_s)
  plan(state, i, PHASE.fills, now_s, Infinity)
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
  plan(state, i, PHASE.clearsBay, now_s, stageEnd(scenario, now_s, tenders.fillClear_s[i]!, i, STAGE.fillClear, count))
  if (on) on(EVENT['ends-fill'], now_s, i, f)
  replanFill(scenario, state, f, now_s, on)
}

function leaveFill(scenario: Scenario, state: SimState, i: number, now_s: number, on: OnEvent | undefined): void {
  const { tenders } = scenario
  const site = state.place[i]!
  state.place[i] = tenders.dump[i]!
  plan(state, i, PHASE.drivesToDump, now_s, stageEnd(scenario, now_s, tenders.toDump_s[i]!, i, STAGE.toDump, state.filled[i]!))
  if (on) on(EVENT['leaves-fill'], now_s, i, site - scenario.dumps.count)
  leaveSlot(scenario, state, i, site, now_s, on)
}
