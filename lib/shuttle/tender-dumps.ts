import { STAGE, stageFactor } from './chance'
import { setOff } from './drive'
import { replanDump, syncDump } from './dump-site'
import { EVENT, type OnEvent } from './event'
import { PHASE } from './phase'
import { planPhase, stageEnd } from './plan-phase'
import type { Scenario } from './scenario'
import { leaveSlot } from './site-places'
import type { SimState } from './state'

/** In position: it dumps. */
export function startDump(scenario: Scenario, state: SimState, i: number, now_s: number, on: OnEvent | undefined): void {
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

/** A part of its load is out: the next one follows, or it clears the position. */
export function endPart(scenario: Scenario, state: SimState, i: number, now_s: number, on: OnEvent | undefined): void {
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

/** Clear of the dump site: it goes to fill, rests, or leaves the shuttle. */
export function leaveDump(scenario: Scenario, state: SimState, i: number, now_s: number, on: OnEvent | undefined): void {
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
