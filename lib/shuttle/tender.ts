import { goOn, setOff } from './drive'
import { EVENT, type OnEvent } from './event'
import { PHASE } from './phase'
import type { Scenario } from './scenario'
import { arrive } from './site-places'
import type { SimState } from './state'
import { endPart, leaveDump, startDump } from './tender-dumps'
import { endFill, leaveFill, startFill, topUp } from './tender-fills'

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
