import type { ControlName } from './state'
import { troubleCodes, type DrillEvent, type EventCode } from './events'
import { movementsOf, type Movement } from './movements'
import { isAverted, whatIf, type WhatIf } from './what-if'
import type { Drill } from './drill'

/** An event explained: the movement without which it would not have been, and what else would have helped. */
export type Finding = {
  readonly event: DrillEvent
  /** Absent: no single movement did it, the situation did. */
  readonly cause?: { readonly movement: Movement; readonly withoutIt: Readonly<Record<string, number>> }
  readonly remedies: readonly Remedy[]
}

/** A control held elsewhere for a while before: did that keep the trouble away, and what would the gauges have read? */
export type Remedy = {
  readonly control: ControlName
  readonly at: number
  readonly from_s: number
  readonly averts: boolean
  readonly values: Readonly<Record<string, number>>
}

type Suspect = { readonly control: ControlName; readonly direction: 1 | -1 }
const opened = (control: ControlName): Suspect => ({ control, direction: 1 })
const closed = (control: ControlName): Suspect => ({ control, direction: -1 })

/** Which movements can be to blame for which trouble. */
const suspects: Partial<Record<EventCode, readonly Suspect[]>> = {
  'air-bound': [opened('intake'), closed('tankToPump'), closed('throttle'), opened('drain'), opened('discharge'), opened('tankFill')],
  'prime-lost': [closed('tankToPump'), opened('discharge'), opened('throttle'), opened('tankFill'), opened('drain'), closed('intake'), closed('throttle')],
  'column-fell': [closed('primer'), opened('discharge'), opened('tankFill'), closed('tankToPump'), closed('throttle'), opened('drain'), opened('tankToPump')],
  'running-back': [opened('intake'), closed('throttle'), closed('tankFill'), closed('discharge')],
  'cavitating': [opened('throttle'), opened('tankFill'), closed('tankToPump'), opened('discharge'), closed('intake')],
  'pump-heating': [closed('discharge'), closed('tankFill'), opened('throttle')],
  'discharge-drains-tank': [opened('discharge')],
  'tank-overflow': [closed('tankToPump'), opened('tankFill')],
  'tank-empty': [opened('discharge'), opened('intake'), closed('tankFill')],
  'whirlpool': [opened('discharge'), opened('throttle'), opened('tankFill')],
  'air-leak': [opened('drain')],
  'air-through-outlet': [opened('discharge'), opened('tankFill')],
}

type Try = { readonly control: ControlName; readonly at: number; readonly lead_s: number; readonly isCap?: boolean }
/** What to try in its place. Positions are judgement; whether they help is computed. */
const tries: Partial<Record<EventCode, readonly Try[]>> = {
  'air-bound': [{ control: 'intake', at: 0.03, lead_s: 15, isCap: true }],
  'vacuum-short': [{ control: 'throttle', at: 1, lead_s: 12 }, { control: 'tankFill', at: 1, lead_s: 12 }, { control: 'tankToPump', at: 0.7, lead_s: 12 }, { control: 'tankToPump', at: 0.5, lead_s: 12 }],
  'running-back': [{ control: 'throttle', at: 1, lead_s: 5 }, { control: 'tankToPump', at: 0.5, lead_s: 5 }, { control: 'intake', at: 0, lead_s: 5 }],
  'cavitating': [{ control: 'tankFill', at: 0.6, lead_s: 6, isCap: true }, { control: 'tankToPump', at: 1, lead_s: 6 }, { control: 'discharge', at: 0.5, lead_s: 6, isCap: true }, { control: 'throttle', at: 0.6, lead_s: 6, isCap: true }],
  'pump-heating': [{ control: 'discharge', at: 0.2, lead_s: 40 }],
  'tank-overflow': [{ control: 'tankFill', at: 0, lead_s: 10 }],
  'whirlpool': [{ control: 'discharge', at: 0.5, lead_s: 8, isCap: true }, { control: 'discharge', at: 0.3, lead_s: 8, isCap: true }],
  'prime-lost': [{ control: 'discharge', at: 0.3, lead_s: 15, isCap: true }],
  'air-leak': [{ control: 'drain', at: 0, lead_s: 6 }],
  'primer-left-on': [{ control: 'primer', at: 0, lead_s: 6 }],
}

/** Look no further back than this for a cause. */
const LOOK_BACK_S = 180
const MOST_FINDINGS = 12
/** Openings nearer than this are the same; the intake counts finer, it is cracked by hundredths. */
const SAME_OPENING = 0.02
const SAME_INTAKE_OPENING = 0.003

/**
 * Explains a run that is over: each trouble with the movement that made it, found by leaving
 * the movement out and playing on, and with what would have helped, found the same way.
 *
 * @returns findings in order of time
 */
export const debrief = (drill: Drill): Finding[] => troublesOf(drill).map((event) => explainEvent(drill, event))

/** The run's troubles in order of time, at most a dozen. */
export const troublesOf = (drill: Drill): DrillEvent[] => drill.events.filter(({ code }) => troubleCodes.includes(code)).slice(0, MOST_FINDINGS)

/** Explains one event of a run; plays parts of it again, which takes a moment. */
export function explainEvent(drill: Drill, event: DrillEvent): Finding {
  const movements = movementsOf(drill.scenario.controls, drill.moves)
  // Half a second more: a change must keep the trouble away, not just put it off by a blink.
  const until_s = event.at_s + 0.5
  const possible = movements.filter((movement) => movement.start_s <= event.at_s && movement.end_s >= event.at_s - LOOK_BACK_S &&
    (suspects[event.code] ?? []).some(({ control, direction }) => control === movement.control && Math.sign(movement.to - movement.from) === direction))
  let cause: Finding['cause']
  for (const movement of possible.reverse()) {
    const without = whatIf(drill, { from_s: movement.start_s, leaveOut: movement.moveIndexes }, until_s)
    if (!isBetter(drill, event.code, without)) continue
    cause = { movement, withoutIt: without.values }
    break
  }
  const remedies = (tries[event.code] ?? []).flatMap(({ control, at, lead_s, isCap = false }): Remedy[] => {
    const from_s = Math.max(0, event.at_s - lead_s)
    // What was so already, from then until the trouble, was tried by the run itself.
    if (isHeld(drill, control, at, isCap, from_s, event.at_s)) return []
    const what = whatIf(drill, { from_s, hold: { control, at, isCap } }, until_s)
    return [{ control, at, from_s, averts: isBetter(drill, event.code, what), values: what.values }]
  })
  return { event, ...(cause ? { cause } : {}), remedies }
}

/** Whether a control stood at a position, or for a cap below it, all the time from one moment to another. */
function isHeld(drill: Drill, control: ControlName, at: number, isCap: boolean, from_s: number, to_s: number): boolean {
  const near = control === 'intake' ? SAME_INTAKE_OPENING : SAME_OPENING
  const isThere = (opening: number): boolean => (isCap ? opening <= at + near : Math.abs(opening - at) <= near)
  let before = drill.scenario.controls[control]
  for (const move of drill.moves) {
    if (move.control !== control || move.at_s > to_s) continue
    if (move.at_s <= from_s) before = move.to
    else if (!isThere(move.to)) return false
  }
  return isThere(before)
}

/** Not only that the event stays away: the reading it is about must be right as well. */
function isBetter(drill: Drill, code: EventCode, what: WhatIf): boolean {
  const { eyeVacuum_ft = 0, lift_ft = 0, gasShare = 1 } = what.values
  // Short of vacuum is told only after a wait, so its staying away for that long says nothing.
  if (code === 'vacuum-short') return eyeVacuum_ft > lift_ft
  if (code === 'air-bound' || code === 'prime-lost') return isAverted(code, what) && gasShare < drill.rig.gasLockShare
  return isAverted(code, what)
}
