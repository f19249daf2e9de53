import type { DrillRig } from './rig'
import { loopVacuum_ft } from '../tank-loop'
import { tankHead_ft, type DrillControls, type DrillState } from './state'
import type { DrillGoal } from './scenarios'
import { eyeVacuum_ft } from './gauges'

export type EventCode =
  | 'prime-got' | 'prime-lost' | 'air-bound' | 'vacuum-short' | 'column-fell' | 'running-back' | 'cavitating' | 'pump-heating' | 'discharge-drains-tank'
  | 'tank-overflow' | 'tank-empty' | 'whirlpool' | 'air-leak' | 'air-through-outlet' | 'primer-left-on' | 'goal-met' | 'gave-up' | 'time-up'

/** Something that happened, with the readings that show it. */
export type DrillEvent = { readonly code: EventCode; readonly at_s: number; readonly values: Readonly<Record<string, number>> }

/** Events that are mistakes or misfortunes, worth explaining. */
export const troubleCodes: readonly EventCode[] = ['prime-lost', 'air-bound', 'vacuum-short', 'column-fell', 'running-back', 'cavitating', 'pump-heating',
  'discharge-drains-tank', 'tank-overflow', 'tank-empty', 'whirlpool', 'air-leak', 'air-through-outlet', 'primer-left-on']

type Watched = Exclude<EventCode, 'gave-up' | 'time-up'>

/** Memory of the look-out: how long each condition has held, and whether it was told. */
export type Watch = { readonly held_s: Record<Watched, number>; readonly clear_s: Record<Watched, number>; readonly told: Record<Watched, boolean>; hasPrime: boolean; wasWet: boolean
  /** Highest the column has stood since it last fell. */
  peak_gal: number }

const watched = ['prime-got', 'prime-lost', 'air-bound', 'vacuum-short', 'column-fell', 'running-back', 'cavitating', 'pump-heating', 'discharge-drains-tank',
  'tank-overflow', 'tank-empty', 'whirlpool', 'air-leak', 'air-through-outlet', 'primer-left-on', 'goal-met'] as const satisfies readonly Watched[]

const fill = <V>(value: V): Record<Watched, V> => Object.fromEntries(watched.map((code) => [code, value])) as Record<Watched, V>

/** A watch that has seen nothing yet. */
export const beginWatch = (): Watch => ({ held_s: fill(0), clear_s: fill(0), told: fill(false), hasPrime: false, wasWet: false, peak_gal: 0 })

/** A watch that goes on by itself from here. */
export const copyWatch = (watch: Watch): Watch => ({ ...watch, held_s: { ...watch.held_s }, clear_s: { ...watch.clear_s }, told: { ...watch.told } })

/** How long a condition must hold before it is an event, [s]. Judgement: long enough that a needle's twitch is none. */
const holdFor_s: Record<Watched, number> = {
  'prime-got': 1, 'prime-lost': 1, 'air-bound': 1, 'vacuum-short': 12, 'column-fell': 1, 'running-back': 2, 'cavitating': 2, 'pump-heating': 0,
  'discharge-drains-tank': 4, 'tank-overflow': 0, 'tank-empty': 0.5, 'whirlpool': 1, 'air-leak': 5, 'air-through-outlet': 3,
  'primer-left-on': 0, 'goal-met': 0,
}

/** A trouble counts as a new one only after it has been away this long: a surging pump is one trouble. */
const CLEAR_FOR_S = 10
/** Gas share under which a pump counts as full of water. */
const WET_SHARE = 0.03
/** Warming that a hand on the casing feels; above it a maker's limit is near. Judgement. */
const HOT_DEGF = 25
/** A column that has sunk by this part of the hose has fallen. */
const FALL_SHARE = 0.2
const OVERFLOW_GAL = 5
const PRIMER_WATER_GAL = 15

function holds(code: Watched, watch: Watch, rig: DrillRig, state: DrillState, controls: DrillControls, goal: DrillGoal): boolean {
  switch (code) {
    case 'prime-got': return state.isColumnFull && state.gasShare < WET_SHARE && controls.intake > 0.05
    case 'prime-lost': return watch.hasPrime && (!state.isColumnFull || state.isBound)
    case 'air-bound': return !watch.hasPrime && watch.wasWet && state.isBound && controls.intake > 0
    // What the loop would make with no air in it, by the law of the tank line: short of the lift, it can never get there.
    case 'vacuum-short': return !watch.hasPrime && !state.isColumnFull && controls.intake > 0 && controls.primer === 0 && controls.tankToPump > 0 &&
      state.tankIn_gpm > 1 && !state.isBound && !state.isCavitating &&
      loopVacuum_ft(state.flow_gpm, rig.tankToPump_gpmPerSqrtFt, controls.tankToPump, tankHead_ft(rig, state.tankWater_gal)) < state.lift_ft
    case 'column-fell': return !watch.hasPrime && state.hoseWater_gal < watch.peak_gal - FALL_SHARE * rig.hose_gal
    case 'running-back': return state.intakeWater_gpm < -3 && state.tankOut_gpm > 1
    case 'cavitating': return state.isCavitating
    case 'pump-heating': return state.warm_degF > HOT_DEGF && state.gasShare < 0.5
    case 'discharge-drains-tank': return !watch.hasPrime && state.delivered_gpm > 20 && state.tankOut_gpm > 20
    case 'tank-overflow': return state.overflow_gal > OVERFLOW_GAL
    case 'tank-empty': return controls.tankToPump > 0 && state.tankWater_gal < rig.tankUncover_gal
    case 'whirlpool': return state.strainerAirShare > 0.01 && state.column_gpm > 20
    case 'air-leak': return state.leakAir_gpm > 1 && controls.intake > 0
    case 'air-through-outlet': return controls.primer > 0 && controls.tankFill + controls.discharge > 0.02 && state.gasShare > 0.5
    case 'primer-left-on': return state.primerWater_gal > PRIMER_WATER_GAL
    case 'goal-met': return goal.kind === 'hold-draft' && state.isColumnFull && controls.tankToPump < 0.02 && controls.tankFill < 0.02 &&
      controls.intake > 0.9 && state.delivered_gpm >= goal.flow_gpm && state.dischargePressure_psi >= goal.pressure_psi
  }
}

/** Told once a run, however often they come back. */
const onceOnly: ReadonlySet<Watched> = new Set<Watched>(['goal-met', 'tank-overflow', 'primer-left-on'])

/**
 * Looks once a step for what happens; adds each event to `events`.
 *
 * @param watch  changed in place
 * @param events added to
 */
export function lookOut(watch: Watch, rig: DrillRig, state: DrillState, controls: DrillControls, goal: DrillGoal, step_s: number, events: DrillEvent[]): void {
  for (const code of watched) {
    if (!holds(code, watch, rig, state, controls, goal)) {
      watch.held_s[code] = 0
      watch.clear_s[code] += step_s
      if (watch.clear_s[code] > CLEAR_FOR_S && !onceOnly.has(code)) watch.told[code] = false
      continue
    }
    watch.clear_s[code] = 0
    watch.held_s[code] += step_s
    const wait_s = code === 'goal-met' && goal.kind === 'hold-draft' ? goal.hold_s : holdFor_s[code]
    if (watch.told[code] || watch.held_s[code] < wait_s) continue
    watch.told[code] = true
    if (code === 'prime-got' && watch.hasPrime) continue
    if (code === 'prime-got') watch.hasPrime = true
    if (code === 'prime-lost') watch.hasPrime = false
    if (code === 'prime-lost' || code === 'column-fell') watch.peak_gal = state.hoseWater_gal
    if (code === 'prime-lost' || code === 'air-bound') watch.wasWet = false
    events.push({ code, at_s: state.time_s, values: readings(rig, state) })
  }
  watch.peak_gal = Math.max(watch.peak_gal, state.hoseWater_gal)
  if (state.gasShare < WET_SHARE) watch.wasWet = true
}

/** The readings an event is told with. */
export function readings(rig: DrillRig, state: DrillState): Record<string, number> {
  return {
    eyeVacuum_ft: eyeVacuum_ft(rig, state), lift_ft: state.lift_ft, discharge_psi: state.dischargePressure_psi, gasShare: state.gasShare,
    columnShare: state.hoseWater_gal / rig.hose_gal, tank_gal: state.tankWater_gal, flow_gpm: state.flow_gpm,
    delivered_gpm: state.delivered_gpm, overflow_gal: state.overflow_gal, lostDown_gal: state.lostDown_gal, warm_degF: state.warm_degF,
    primerWater_gal: state.primerWater_gal, leakAir_gpm: state.leakAir_gpm, column_gpm: state.column_gpm,
  }
}
