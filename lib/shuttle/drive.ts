import { STAGE } from './chance'
import { chooseWay } from './choose-way'
import { EVENT, type OnEvent } from './event'
import { PHASE } from './phase'
import { planNext, planPhase, stageEnd } from './plan-phase'
import type { Scenario } from './scenario'
import type { SimState } from './state'

/** Tender `i` sets off from the site it is at. Its leg is one drive, or pieces between and through one-lane stretches. */
export function setOff(scenario: Scenario, state: SimState, i: number, isLoaded: boolean, now_s: number): void {
  const { tenders, dumps } = scenario
  const { ways } = tenders
  const way = chooseWay(scenario, state, i, isLoaded, now_s)
  state.way[i] = way - tenders.wayFrom[i]!
  state.part[i] = 0
  state.place[i] = isLoaded ? ways.dump[way]! : dumps.count + ways.fill[way]!
  const pass = isLoaded ? ways.toDumpFrom[way]! : ways.toFillFrom[way]!
  const hasLane = pass < (isLoaded ? ways.toDumpUpTo[way]! : ways.toFillUpTo[way]!)
  const first_s = hasLane ? ways.at_s[pass]! : isLoaded ? ways.toDump_s[way]! : ways.toFill_s[way]!
  planPhase(state, i, isLoaded ? PHASE.drivesToDump : PHASE.drivesToFill, now_s, pieceEnd(scenario, state, i, isLoaded, first_s, now_s))
}

function pieceEnd(scenario: Scenario, state: SimState, i: number, isLoaded: boolean, planned_s: number, now_s: number): number {
  return isLoaded
    ? stageEnd(scenario, now_s, planned_s, i, STAGE.toDump, state.filled[i]!)
    : stageEnd(scenario, now_s, planned_s, i, STAGE.toFill, state.rounds[i]!)
}

/**
 * Tender `i` has driven a piece of its leg. Pieces in turn: up to a stretch, through it, up to the next, …
 *
 * @returns false when the leg is done and it arrives
 */
export function goOn(scenario: Scenario, state: SimState, i: number, now_s: number, on: OnEvent | undefined): boolean {
  const { wayFrom, ways } = scenario.tenders
  const isLoaded = state.phase[i] === PHASE.drivesToDump
  const way = wayFrom[i]! + state.way[i]!
  const upTo = isLoaded ? ways.toDumpUpTo[way]! : ways.toFillUpTo[way]!
  const pass = (isLoaded ? ways.toDumpFrom[way]! : ways.toFillFrom[way]!) + (state.part[i]! >> 1)
  if (pass >= upTo) return false
  const lane = ways.lane[pass]!
  if ((state.part[i]! & 1) === 0) {
    if (canEnter(state, lane, isLoaded)) {
      enter(scenario, state, i, pass, isLoaded, now_s, on)
      return true
    }
    planPhase(state, i, PHASE.waitsAtRoad, now_s, Infinity)
    state.ticket[i] = state.rank[i]!
    const line = 2 * lane + (isLoaded ? 1 : 0)
    state.laneWaiting[line] = state.laneWaiting[line]! + 1
    if (on) on(EVENT['waits-at-road'], now_s, i, lane)
    return true
  }
  const done_s = ways.at_s[pass]! + ways.pass_s[pass]!
  const end_s = pass + 1 < upTo ? ways.at_s[pass + 1]! : isLoaded ? ways.toDump_s[way]! : ways.toFill_s[way]!
  state.part[i] = state.part[i]! + 1
  planNext(state, i, pieceEnd(scenario, state, i, isLoaded, Math.max(0, end_s - done_s), now_s))
  state.laneInside[lane] = state.laneInside[lane]! - 1
  if (on) on(EVENT['leaves-one-lane'], now_s, i, lane)
  if (state.laneInside[lane] === 0) admitWaiting(scenario, state, lane, now_s, on)
  return true
}

/** Loaded tenders go before empty ones; those of one direction follow each other. */
function canEnter(state: SimState, lane: number, isLoaded: boolean): boolean {
  const isFree = state.laneInside[lane] === 0 || (state.laneLoaded[lane] === 1) === isLoaded
  return isFree && (isLoaded || state.laneWaiting[2 * lane + 1] === 0)
}

function enter(scenario: Scenario, state: SimState, i: number, pass: number, isLoaded: boolean, now_s: number, on: OnEvent | undefined): void {
  const { ways } = scenario.tenders
  const lane = ways.lane[pass]!
  state.laneInside[lane] = state.laneInside[lane]! + 1
  state.laneLoaded[lane] = isLoaded ? 1 : 0
  state.part[i] = state.part[i]! + 1
  planNext(state, i, pieceEnd(scenario, state, i, isLoaded, ways.pass_s[pass]!, now_s))
  if (on) on(EVENT['enters-one-lane'], now_s, i, lane)
}

/** Everyone who waits in the direction whose turn it is goes in, first come first. */
export function admitWaiting(scenario: Scenario, state: SimState, lane: number, now_s: number, on: OnEvent | undefined): void {
  const { tenders, dumps } = scenario
  const isLoaded = state.laneWaiting[2 * lane + 1]! > 0
  const line = 2 * lane + (isLoaded ? 1 : 0)
  while (state.laneWaiting[line]! > 0) {
    let first = -1
    let firstPass = -1
    for (let i = 0; i < tenders.count; i++) {
      if (state.phase[i] !== PHASE.waitsAtRoad || state.place[i]! < dumps.count !== isLoaded) continue
      const pass = passAt(scenario, state, i, isLoaded)
      if (tenders.ways.lane[pass] !== lane || (first >= 0 && state.ticket[i]! > state.ticket[first]!)) continue
      first = i
      firstPass = pass
    }
    state.laneWaiting[line] = state.laneWaiting[line]! - 1
    state.waitedOnRoad_s[first] = state.waitedOnRoad_s[first]! + (now_s - state.phaseSince_s[first]!)
    state.phase[first] = isLoaded ? PHASE.drivesToDump : PHASE.drivesToFill
    state.phaseSince_s[first] = now_s
    enter(scenario, state, first, firstPass, isLoaded, now_s, on)
  }
}

/** Row of the stretch that tender `i` waits for or drives through. */
function passAt(scenario: Scenario, state: SimState, i: number, isLoaded: boolean): number {
  const { wayFrom, ways } = scenario.tenders
  const way = wayFrom[i]! + state.way[i]!
  return (isLoaded ? ways.toDumpFrom[way]! : ways.toFillFrom[way]!) + (state.part[i]! >> 1)
}
