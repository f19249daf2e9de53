import type { DrillRig } from './rig'
import { beginDrill, controlNames, type DrillControls, type DrillState } from './state'
import { STEP_S, stepDrill } from './step'
import { scenarioRig, type DrillScenario } from './scenarios'
import { beginWatch, copyWatch, lookOut, type DrillEvent, type Watch } from './events'
import { addRow, beginRecord, type DrillRecord } from './record'
import { scriptHands, type Hands, type Move } from './hands'

const STEPS_PER_ROW = 5
/** A mark every five seconds: what-if runs start from one instead of from the beginning. */
const STEPS_PER_MARK = 250

/** The drill as it stood at a step. */
export type DrillMark = { readonly stepCount: number; readonly state: DrillState; readonly controls: DrillControls; readonly watch: Watch }

/** A drill under way: the model, the hands' controls and all that is kept of it. */
export type Drill = {
  readonly scenario: DrillScenario
  readonly rig: DrillRig
  readonly state: DrillState
  readonly controls: DrillControls
  /** Every change of a control, as it was made. */
  readonly moves: Move[]
  readonly events: DrillEvent[]
  readonly record: DrillRecord
  readonly watch: Watch
  readonly marks: DrillMark[]
  readonly lastControls: DrillControls
  stepCount: number
  isOver: boolean
}

/**
 * Begins a drill.
 *
 * @param rig      the pumper and site; the scenario's changes are made to it here
 * @param scenario from `drillScenarios`
 */
export function createDrill(rig: DrillRig, scenario: DrillScenario): Drill {
  const played = scenarioRig(rig, scenario)
  const state = beginDrill(played, scenario.start(played))
  const drill: Drill = {
    scenario, rig: played, state, controls: { ...scenario.controls }, lastControls: { ...scenario.controls },
    moves: [], events: [], record: beginRecord(scenario.most_s), watch: beginWatch(), marks: [], stepCount: 0, isOver: false,
  }
  addRow(drill.record, played, state, drill.controls)
  drill.marks.push(markOf(drill))
  return drill
}

const markOf = ({ stepCount, state, controls, watch }: Drill): DrillMark =>
  ({ stepCount, state: { ...state }, controls: { ...controls }, watch: copyWatch(watch) })

/** One step: notes what the hands changed, steps the model, looks for events, keeps the record. Nothing once it is over. */
export function advanceDrill(drill: Drill): void {
  if (drill.isOver) return
  const { state, controls, lastControls, rig, scenario } = drill
  for (const control of controlNames) {
    if (controls[control] === lastControls[control]) continue
    drill.moves.push({ at_s: state.time_s, control, to: controls[control] })
    lastControls[control] = controls[control]
  }
  stepDrill(rig, state, controls)
  drill.stepCount += 1
  // Time by count, so that it does not drift.
  state.time_s = drill.stepCount * STEP_S
  const { length } = drill.events
  lookOut(drill.watch, rig, state, controls, scenario.goal, STEP_S, drill.events)
  for (let index = length; index < drill.events.length; index++) if (drill.events[index]?.code === 'goal-met') drill.isOver = true
  if (drill.stepCount % STEPS_PER_ROW === 0) addRow(drill.record, rig, state, controls)
  if (drill.stepCount % STEPS_PER_MARK === 0) drill.marks.push(markOf(drill))
  if (state.time_s >= scenario.most_s && !drill.isOver) {
    drill.isOver = true
    drill.events.push({ code: 'time-up', at_s: state.time_s, values: {} })
  }
}

/** The trainee says: no draft to be had here. Ends the run. */
export function giveUpDrill(drill: Drill): void {
  if (drill.isOver) return
  drill.isOver = true
  drill.events.push({ code: 'gave-up', at_s: drill.state.time_s, values: { tank_gal: drill.state.tankWater_gal } })
}

/**
 * Plays a whole drill without a screen.
 *
 * @param hands   a script, or hands that look at the gauges
 * @param until_s stop here at the latest; absent: the scenario's own end
 */
export function playScript(rig: DrillRig, scenario: DrillScenario, hands: readonly Move[] | Hands, until_s: number = scenario.most_s): Drill {
  const drill = createDrill(rig, scenario)
  const act = typeof hands === 'function' ? hands : scriptHands(hands)
  while (!drill.isOver && drill.state.time_s < until_s - 5e-7) {
    act(drill.controls, drill.state)
    advanceDrill(drill)
  }
  return drill
}
