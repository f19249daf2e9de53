import { FEET_OF_WATER_PER_PSI, GALLONS_PER_CUBIC_FOOT, SECONDS_PER_MINUTE } from '../../units'
import type { DrillRig } from './rig'
import type { DrillControls, DrillState } from './state'
import { tankHead_ft } from './state'

/** 1 cubic foot a second in gpm. */
const GPM_PER_CUBIC_FOOT_PER_SECOND = GALLONS_PER_CUBIC_FOOT * SECONDS_PER_MINUTE
/** Standard gravity. */
const GRAVITY_FT_PER_S2 = 32.174
/** Weight of water over weight of air, both at 60 °F, air at 33.9 ft of water. */
const WATER_OVER_AIR = 62.37 / 0.0763
const AIR_REFERENCE_ABSOLUTE_FT = 33.9
/** Air through a valve moves no faster than about half the speed of sound: the square-root law ends there. */
const MOST_AIR_SPEED_FT_PER_S = 600
const ORIFICE_FACTOR = 0.6

const rootOf = (x: number): number => Math.sqrt(Math.max(0, x))
/** Square root that keeps the sign: flow against pressure difference. */
export const signedRoot = (x: number): number => (x < 0 ? -Math.sqrt(-x) : Math.sqrt(x))

/** Gas that runs back with water from the pump: its share, but none worth a pocket from a pump as good as full. */
export const backGasShare = (state: DrillState): number => (state.gasShare > 0.01 ? state.gasShare : 0)

/** Part of the tank's outlet under water: 1 until the level nears it. */
export const outletCover = (rig: DrillRig, state: DrillState): number =>
  rig.tankUncover_gal > 0 ? Math.min(1, state.tankWater_gal / rig.tankUncover_gal) : state.tankWater_gal > 0 ? 1 : 0

/** Tank water to the eye through a check valve, [gpm]; never more than the tank holds. */
export function tankOut_gpm(rig: DrillRig, state: DrillState, controls: DrillControls, eye_ft: number, step_min: number): number {
  const head_ft = rig.atmosphere_absolute_ft + tankHead_ft(rig, state.tankWater_gal) - eye_ft
  const flow = outletCover(rig, state) * rig.tankToPump_gpmPerSqrtFt * controls.tankToPump * rootOf(head_ft)
  return Math.min(flow, state.tankWater_gal / step_min)
}

/** Air drawn through an uncovered tank outlet, as mass, [ft·gal a minute]. */
export function tankAir(rig: DrillRig, state: DrillState, controls: DrillControls, eye_ft: number): number {
  const bare = 1 - outletCover(rig, state)
  if (bare <= 0) return 0
  return bare * rig.airEaseFactor * rig.tankToPump_gpmPerSqrtFt * controls.tankToPump *
    rootOf(rig.atmosphere_absolute_ft - eye_ft) * rig.atmosphere_absolute_ft
}

/** Air drawn back through open outlets when the pump makes less than atmosphere at its discharge, [ft·gal a minute]. */
export function outletAir(rig: DrillRig, controls: DrillControls, eye_ft: number, head_ft: number): number {
  const short_ft = rig.atmosphere_absolute_ft - eye_ft - head_ft
  if (short_ft <= 0) return 0
  const open = rig.tankFill_gpmPerSqrtPsi * controls.tankFill + rig.discharge_gpmPerSqrtPsi * controls.discharge
  return rig.airEaseFactor * open * Math.sqrt(short_ft / FEET_OF_WATER_PER_PSI) * rig.atmosphere_absolute_ft
}

/** Gas through the intake valve from one pressure to a lower one, as mass, [ft·gal a minute]. */
function valveAir(rig: DrillRig, opening: number, from_ft: number, to_ft: number): number {
  const ratio = WATER_OVER_AIR * (AIR_REFERENCE_ABSOLUTE_FT / from_ft)
  const speed = Math.min(MOST_AIR_SPEED_FT_PER_S, Math.sqrt(2 * GRAVITY_FT_PER_S2 * (from_ft - to_ft) * ratio))
  return ORIFICE_FACTOR * rig.intake_sqft * opening ** 2 * speed * GPM_PER_CUBIC_FOOT_PER_SECOND * from_ft
}

/**
 * Gas from the hose's air pocket to the pump while the column has not reached the valve;
 * negative when the pump's own gas runs back. Never past equal pressures within the step.
 */
export function pocketAir(rig: DrillRig, state: DrillState, controls: DrillControls, eye_ft: number, step_min: number): number {
  const pocket_gal = rig.hose_gal - state.hoseWater_gal
  const top_ft = state.hoseAir_ftGal / pocket_gal
  if (top_ft > eye_ft) return Math.min(valveAir(rig, controls.intake, top_ft, eye_ft), ((top_ft - eye_ft) * pocket_gal) / step_min)
  const back = Math.min(valveAir(rig, controls.intake, eye_ft, top_ft), ((eye_ft - top_ft) * pocket_gal) / step_min)
  return -Math.min(backGasShare(state) * back, (0.5 * state.pumpAir_ftGal) / step_min)
}

/** Water that runs back into the air pocket when the eye stands above it, 0 or less, [gpm]. */
export function pocketWater(rig: DrillRig, state: DrillState, controls: DrillControls, eye_ft: number, step_min: number): number {
  const pocket_gal = rig.hose_gal - state.hoseWater_gal
  if (eye_ft <= state.hoseAir_ftGal / pocket_gal) return 0
  const back = (1 - backGasShare(state)) * rig.intake_gpmPerSqrtFt * controls.intake ** 2 * Math.sqrt(eye_ft - state.hoseAir_ftGal / pocket_gal)
  const room_gal = pocket_gal - state.hoseAir_ftGal / eye_ft
  return -Math.min(back, room_gal / step_min)
}

/** Water through hose and valve once the column stands at the valve, [gpm]; negative runs down to the source. */
export function columnThrough_gpm(rig: DrillRig, controls: DrillControls, lift_ft: number, eye_ft: number): number {
  const opening = controls.intake ** 2
  if (opening <= 0) return 0
  const resistance = 1 / rig.suction_gpmPerSqrtFt ** 2 + 1 / (rig.intake_gpmPerSqrtFt * opening) ** 2
  return signedRoot((rig.atmosphere_absolute_ft - lift_ft - eye_ft) / resistance)
}

/** What the primer moves at this eye pressure, gas or water, [gpm]. */
export function primerDraw_gpm(rig: DrillRig, controls: DrillControls, eye_ft: number): number {
  if (controls.primer <= 0) return 0
  return rig.primer_gpm * Math.max(0, Math.min(1, 1 - (rig.atmosphere_absolute_ft - eye_ft) / rig.primerVacuum_ft))
}
