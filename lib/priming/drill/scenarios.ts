import type { DrillRig } from './rig'
import { drillRig } from './rig'
import type { DrillControls, DrillStart } from './state'
import { restControls } from './state'

export type ScenarioCode =
  | 'primer-works' | 'primer-fails' | 'small-fill-line' | 'air-leak' | 'strainer-shallow' | 'portable-tank' | 'big-fill-line' | 'lift-too-high'

/** What ends the run well. */
export type DrillGoal =
  | { readonly kind: 'hold-draft'; readonly flow_gpm: number; readonly pressure_psi: number; readonly hold_s: number }
  /** The right answer is to stop trying while there is still water: at most this share of the tank gone. */
  | { readonly kind: 'give-up'; readonly mostTankUsedShare: number }

export type DrillScenario = {
  readonly code: ScenarioCode
  /** What this scenario changes on the rig it is played with. */
  readonly change: (rig: DrillRig) => Partial<DrillRig>
  readonly start: (rig: DrillRig) => DrillStart
  readonly controls: Readonly<DrillControls>
  readonly goal: DrillGoal
  /** A good run: what the score compares with. Judgement. */
  readonly par: { readonly time_s: number; readonly water_gal: number; readonly moveCount: number }
  /** The run stops here whatever happens. */
  readonly most_s: number
}

const holdDraft: DrillGoal = { kind: 'hold-draft', flow_gpm: 150, pressure_psi: 80, hold_s: 10 }
const threeQuarters = (pumpGasShare: number) => (rig: DrillRig): DrillStart => ({ tankWater_gal: 0.75 * rig.tank_gal, pumpGasShare })
/** A dead primer, whatever the rig has. */
const noPrimer = { primer_gpm: 0 }

export const drillScenarios: readonly DrillScenario[] = [
  { code: 'primer-works', change: () => ({}), start: threeQuarters(1), controls: restControls, goal: holdDraft,
    par: { time_s: 75, water_gal: 10, moveCount: 6 }, most_s: 420 },
  { code: 'primer-fails', change: () => noPrimer, start: threeQuarters(0), controls: restControls,
    goal: holdDraft, par: { time_s: 170, water_gal: 40, moveCount: 14 }, most_s: 600 },
  { code: 'small-fill-line', change: (rig) => ({ ...noPrimer, tankFill_gpmPerSqrtPsi: Math.min(27, rig.tankFill_gpmPerSqrtPsi) }), start: threeQuarters(0), controls: restControls,
    goal: holdDraft, par: { time_s: 200, water_gal: 40, moveCount: 16 }, most_s: 600 },
  { code: 'air-leak', change: () => ({}), start: threeQuarters(1), controls: { ...restControls, drain: 1 }, goal: holdDraft,
    par: { time_s: 100, water_gal: 10, moveCount: 7 }, most_s: 420 },
  { code: 'strainer-shallow', change: () => ({ depth_ft: 0.9 }), start: threeQuarters(1), controls: restControls,
    goal: { ...holdDraft, flow_gpm: 90 }, par: { time_s: 90, water_gal: 10, moveCount: 8 }, most_s: 420 },
  // A frame tank of about 2,000 gal with a low-level strainer: the pumper stands beside it.
  { code: 'portable-tank', change: () => ({ ...noPrimer, lift_ft: 4, depth_ft: 1.5, source_sqft: 130,
    coverAtRest_ft: 0.1, coverPer100Gpm_ft: 0.06 }), start: threeQuarters(0), controls: restControls,
    goal: holdDraft, par: { time_s: 150, water_gal: 40, moveCount: 14 }, most_s: 600 },
  { code: 'big-fill-line', change: (rig) => ({ ...noPrimer, tankFill_gpmPerSqrtPsi: Math.max(60, rig.tankFill_gpmPerSqrtPsi), tankToPump_gpmPerSqrtFt: Math.min(97, rig.tankToPump_gpmPerSqrtFt) }), start: threeQuarters(0),
    controls: restControls, goal: holdDraft, par: { time_s: 180, water_gal: 40, moveCount: 16 }, most_s: 600 },
  { code: 'lift-too-high', change: (rig) => ({ ...noPrimer, lift_ft: rig.atmosphere_absolute_ft - rig.cavitation_absolute_ft + 0.5,
    hose_gal: rig.hose_gal * 1.3 }), start: threeQuarters(0), controls: restControls,
    goal: { kind: 'give-up', mostTankUsedShare: 0.25 }, par: { time_s: 90, water_gal: 20, moveCount: 8 }, most_s: 420 },
]

/** @throws RangeError if there is no such scenario */
export function getScenario(code: string): DrillScenario {
  const found = drillScenarios.find((scenario) => scenario.code === code)
  if (!found) throw new RangeError(`no drill scenario called ${code}`)
  return found
}

/** The rig as the scenario has it. */
export const scenarioRig = (rig: DrillRig, scenario: DrillScenario): DrillRig => drillRig({ ...rig, ...scenario.change(rig) })
