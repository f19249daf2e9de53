import { fillSiteFactor, STAGE, stageFactor } from './chance'
import { setOff } from './drive'
import { EVENT, type OnEvent } from './event'
import { replanFill, syncFill } from './fill-site'
import { PHASE } from './phase'
import { planPhase, stageEnd } from './plan-phase'
import type { Scenario } from './scenario'
import { leaveSlot } from './site-places'
import type { SimState } from './state'

/** Hooked up: it fills, or stands ready until it is its turn. */
export function startFill(scenario: Scenario, state: SimState, i: number, now_s: number, on: OnEvent | undefined): void {
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

/** The slow last part of the filling begins. */
export function topUp(scenario: Scenario, state: SimState, i: number, now_s: number, on: OnEvent | undefined): void {
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

/** Full: it clears the bay, and the next who stands ready begins. */
export function endFill(scenario: Scenario, state: SimState, i: number, now_s: number, on: OnEvent | undefined): void {
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

/** Clear of the fill site: it drives to dump. */
export function leaveFill(scenario: Scenario, state: SimState, i: number, now_s: number, on: OnEvent | undefined): void {
  const site = state.place[i]!
  setOff(scenario, state, i, true, now_s)
  if (on) on(EVENT['leaves-fill'], now_s, i, site - scenario.dumps.count)
  leaveSlot(scenario, state, i, site, now_s, on)
}
