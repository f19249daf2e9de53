import { FEET_OF_WATER_PER_PSI, SECONDS_PER_MINUTE } from '../../units'
import type { DrillRig } from './rig'
import type { DrillControls, DrillState } from './state'
import { sourceDrop_ft } from './state'
import { outletCover } from './laws'
import { gasOut_gpm, settleEye } from './eye'
import { moveColumn } from './column'

/** The model's step. */
export const STEP_S = 0.02

/** Head factor of a pump with gas in its impeller: 1 for water, ½ at the gas-lock share, then to nothing. */
const headFactor = (rig: DrillRig, gasShare: number): number => 1 / (1 + (gasShare / rig.gasLockShare) ** rig.headExponent)
/** How much of the gas that its share of the flow would carry, the impeller does carry on. */
const carryFactor = (rig: DrillRig, gasShare: number): number => 1 / (1 + (gasShare / rig.gasLockShare) ** rig.carryExponent)

/** Part of the strainer's flow that is air: none while it is covered deep enough for the flow. */
function strainerAirShare(rig: DrillRig, drop_ft: number, column_gpm: number): number {
  const depth_ft = rig.depth_ft - drop_ft
  if (depth_ft <= 0) return 1
  const need_ft = rig.coverAtRest_ft + (rig.coverPer100Gpm_ft * Math.max(0, column_gpm)) / 100
  return depth_ft >= need_ft ? 0 : rig.whirlpoolAirShare * (1 - depth_ft / need_ft)
}

/**
 * One step of the drill: air and water in suction, pump and tank loop.
 *
 * Changes `state` and nothing else, and allocates nothing.
 *
 * @param rig      from `drillRig`
 * @param state    from `beginDrill`; changed
 * @param controls what the hands do during this step
 * @param step_s   length of the step, above 0; STEP_S unless the step itself is tested
 */
export function stepDrill(rig: DrillRig, state: DrillState, controls: DrillControls, step_s: number = STEP_S): void {
  const step_min = step_s / SECONDS_PER_MINUTE
  const atmosphere_ft = rig.atmosphere_absolute_ft
  const drop_ft = sourceDrop_ft(rig, state)
  state.lift_ft = rig.lift_ft + drop_ft
  state.speedShare += (rig.idleShare + (1 - rig.idleShare) * controls.throttle - state.speedShare) * (1 - Math.exp(-step_s / rig.speedLag_s))

  if (state.gasShare > rig.bindFactor * rig.gasLockShare) state.isBound = true
  else if (state.gasShare < rig.gripFactor * rig.gasLockShare) state.isBound = false
  const grip = state.isBound ? rig.boundHeadShare : 1
  state.pumpHead_ft = Math.max(0, grip * headFactor(rig, state.gasShare) *
    (rig.shutOff_ft * state.speedShare ** 2 - rig.pumpLoss_ftPerGpm2 * state.flow_gpm ** 2))
  const pressure_psi = Math.max(0, (state.eye_absolute_ft - atmosphere_ft + state.pumpHead_ft) / FEET_OF_WATER_PER_PSI)
  const fillOpen = rig.tankFill_gpmPerSqrtPsi * controls.tankFill
  const dischargeOpen = rig.discharge_gpmPerSqrtPsi * controls.discharge
  const fillAsk_gpm = fillOpen * Math.sqrt(Math.max(0, pressure_psi - rig.tankFillBack_psi))
  const ask_gpm = fillAsk_gpm + dischargeOpen * Math.sqrt(pressure_psi)
  const isOpen = fillOpen + dischargeOpen > 0
  state.flow_gpm = isOpen ? state.flow_gpm + (ask_gpm - state.flow_gpm) * (1 - Math.exp(-step_s / rig.flowLag_s)) : 0

  state.carriedShare = state.isBound ? 0 : state.gasShare * carryFactor(rig, state.gasShare)
  state.primerGasShare = state.gasShare / (state.gasShare + 0.02)
  state.vent_gpm = controls.intake < 0.02 && controls.tankToPump > 0.05 && outletCover(rig, state) >= 1
    ? (state.gasShare * rig.pump_gal * SECONDS_PER_MINUTE) / rig.vent_s : 0
  state.strainerAirShare = strainerAirShare(rig, drop_ft, state.column_gpm)
  state.leakAir_gpm = controls.drain * rig.drainAir_gpm * Math.sqrt(Math.max(0, 1 - state.hoseTop_absolute_ft / atmosphere_ft))

  settleEye(rig, state, controls, step_min)

  const airIn = state.otherAir_ftGalPerMin * step_min
  const airOut = Math.min(state.pumpAir_ftGal + airIn + state.pocketAir_ftGalPerMin * step_min, state.eye_absolute_ft * gasOut_gpm(state) * step_min)
  state.pumpAir_ftGal += airIn + state.pocketAir_ftGalPerMin * step_min - airOut
  state.airIn_ftGal += airIn
  state.airOut_ftGal += airOut

  const water_gpm = state.flow_gpm * (1 - state.carriedShare)
  const primerWater_gpm = state.primer_gpm * (1 - state.primerGasShare)
  state.pumpWater_gal += (state.tankOut_gpm + state.intakeWater_gpm - water_gpm - primerWater_gpm) * step_min
  // What the search for the eye's pressure leaves over, a millionth of a gallon, stays in the tank.
  const over_gal = Math.max(0, state.pumpWater_gal - rig.pump_gal)
  state.pumpWater_gal -= over_gal
  state.primerWater_gal += primerWater_gpm * step_min
  const fillShare = ask_gpm > 0 ? fillAsk_gpm / ask_gpm : isOpen ? fillOpen / (fillOpen + dischargeOpen) : 0
  state.tankIn_gpm = water_gpm * fillShare
  state.delivered_gpm = water_gpm * (1 - fillShare)
  state.discharged_gal += state.delivered_gpm * step_min
  state.tankWater_gal += (state.tankIn_gpm - state.tankOut_gpm) * step_min + over_gal
  if (state.tankWater_gal > rig.tank_gal) {
    state.overflow_gal += state.tankWater_gal - rig.tank_gal
    state.tankWater_gal = rig.tank_gal
  }
  moveColumn(rig, state, controls, step_min)

  state.gasShare = Math.max(0, Math.min(1, 1 - state.pumpWater_gal / rig.pump_gal))
  // While it cavitates the pump's pressure is what the flow that is left makes at the outlets.
  const back_psi = fillOpen + dischargeOpen > 0 ? (rig.tankFillBack_psi * fillOpen) / (fillOpen + dischargeOpen) : 0
  state.dischargePressure_psi = state.isCavitating && isOpen
    ? Math.min(pressure_psi, back_psi + (state.flow_gpm / (fillOpen + dischargeOpen)) ** 2) : pressure_psi
  state.warm_degF = Math.max(0, state.warm_degF + (rig.warming_degFPerMin * state.speedShare ** 3 -
    (state.warm_degF * (state.tankOut_gpm + Math.max(0, state.intakeWater_gpm))) / rig.pump_gal) * step_min)
  state.time_s += step_s
}
