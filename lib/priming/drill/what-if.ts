import type { ControlName } from './state'
import { STEP_S, stepDrill } from './step'
import { copyWatch, lookOut, readings, type DrillEvent, type EventCode } from './events'
import { scriptHands, type Move } from './hands'
import type { Drill } from './drill'

/** A change to a run that was played: moves left out, or one control held somewhere from a moment on. */
export type Change = {
  readonly from_s: number
  readonly leaveOut?: readonly number[]
  readonly hold?: { readonly control: ControlName; readonly at: number
    /** Only held down to it: where the run had it lower, it stays lower. */
    readonly isCap?: boolean }
}

export type WhatIf = { readonly events: readonly DrillEvent[]; readonly values: Readonly<Record<string, number>> }

/**
 * Plays the run again with one change, from the last mark before it: the model is
 * deterministic, so what differs is the change's doing.
 *
 * @param drill   a run that was played
 * @param until_s when to look at the gauges
 * @returns events after the change, and the readings at the end
 */
export function whatIf(drill: Drill, change: Change, until_s: number): WhatIf {
  let mark = drill.marks[0]
  for (const candidate of drill.marks) if (candidate.stepCount * STEP_S <= change.from_s - STEP_S) mark = candidate
  if (!mark) throw new RangeError('drill.marks is empty, must hold the beginning')
  const { rig, scenario } = drill
  const state = { ...mark.state }
  const controls = { ...mark.controls }
  const watch = copyWatch(mark.watch)
  const left = new Set(change.leaveOut ?? [])
  const moves: Move[] = drill.moves.filter((move, index) => !left.has(index) && move.at_s >= state.time_s - STEP_S / 2)
  const act = scriptHands(moves)
  const events: DrillEvent[] = []
  let { stepCount } = mark
  while (stepCount * STEP_S < until_s - STEP_S / 2) {
    act(controls, state)
    if (change.hold && state.time_s >= change.from_s - STEP_S / 2) controls[change.hold.control] = change.hold.isCap ? Math.min(change.hold.at, controls[change.hold.control]) : change.hold.at
    stepDrill(rig, state, controls)
    stepCount += 1
    state.time_s = stepCount * STEP_S
    lookOut(watch, rig, state, controls, scenario.goal, STEP_S, events)
  }
  return { events: events.filter(({ at_s }) => at_s >= change.from_s), values: readings(rig, state) }
}

/** Whether an event of this code stays away in a what-if. */
export const isAverted = (code: EventCode, what: WhatIf): boolean => !what.events.some((event) => event.code === code)
