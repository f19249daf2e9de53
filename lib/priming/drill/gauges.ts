import { inchesOfMercuryFromFeetOfWater, PSI_PER_FOOT_OF_WATER } from '../../units'
import type { DrillRig } from './rig'
import type { DrillState } from './state'
import { sourceDrop_ft } from './state'

/** Intake gauge, one number for both sides of its zero: psi above, inches of mercury below (negative). */
export function intakeGauge(rig: DrillRig, state: DrillState): number {
  const head_ft = state.eye_absolute_ft - rig.atmosphere_absolute_ft
  return head_ft >= 0 ? head_ft * PSI_PER_FOOT_OF_WATER : inchesOfMercuryFromFeetOfWater(head_ft)
}

/** Vacuum at the eye, feet of water; negative above the atmosphere. */
export const eyeVacuum_ft = (rig: DrillRig, state: DrillState): number => rig.atmosphere_absolute_ft - state.eye_absolute_ft

/** How far up to the intake valve the water in the hose stands, 0 to 1. */
export const columnShare = (rig: DrillRig, state: DrillState): number => state.hoseWater_gal / rig.hose_gal

/** How full the booster tank is, 0 to 1. */
export const tankShare = (rig: DrillRig, state: DrillState): number => state.tankWater_gal / rig.tank_gal

/** Water left over the strainer. */
export const strainerDepth_ft = (rig: DrillRig, state: DrillState): number => Math.max(0, rig.depth_ft - sourceDrop_ft(rig, state))
