import type { DrillRig } from './rig'
import { tankHead_ft, type DrillControls, type DrillState } from './state'
import { backGasShare, columnThrough_gpm, outletAir, pocketAir, pocketWater, primerDraw_gpm, tankAir, tankOut_gpm } from './laws'

const MOST_TRIES = 80
/** The eye's pressure is found when it is known to this. */
const NOTHING_FT = 1e-11
/** Less than this is rounding, [gal]. */
const NOTHING_GAL = 1e-10

/**
 * By how much the pump's casing would be overfilled at the step's end if the eye stood at
 * this pressure, [gal]. Falls steadily as the pressure rises: every inflow falls, and gas shrinks.
 * Leaves the flows at that pressure in the state's readings.
 */
function overfill_gal(rig: DrillRig, state: DrillState, controls: DrillControls, eye_ft: number, step_min: number): number {
  state.tankOut_gpm = tankOut_gpm(rig, state, controls, eye_ft, step_min)
  state.primer_gpm = primerDraw_gpm(rig, controls, eye_ft)
  let other = tankAir(rig, state, controls, eye_ft) + outletAir(rig, controls, eye_ft, state.pumpHead_ft)
  let through = 0
  if (state.isColumnFull) {
    const total = columnThrough_gpm(rig, controls, state.lift_ft, eye_ft)
    if (total >= 0) {
      through = total * (1 - state.strainerAirShare)
      state.pocketAir_ftGalPerMin = 0
      if (controls.intake > 0) {
        other += (state.leakAir_gpm + total * state.strainerAirShare) * rig.atmosphere_absolute_ft
      }
    } else {
      through = total * (1 - backGasShare(state))
      state.pocketAir_ftGalPerMin = total * backGasShare(state) * eye_ft
    }
  } else {
    through = pocketWater(rig, state, controls, eye_ft, step_min)
    state.pocketAir_ftGalPerMin = pocketAir(rig, state, controls, eye_ft, step_min)
  }
  state.intakeWater_gpm = through
  state.otherAir_ftGalPerMin = other
  const water = state.tankOut_gpm + through - state.flow_gpm * (1 - state.carriedShare) - state.primer_gpm * (1 - state.primerGasShare)
  const gas = pumpAirIn(state) - eye_ft * gasOut_gpm(state)
  return state.pumpWater_gal + water * step_min + Math.max(0, state.pumpAir_ftGal + gas * step_min) / eye_ft - rig.pump_gal
}

const pumpAirIn = (state: DrillState): number => state.otherAir_ftGalPerMin + state.pocketAir_ftGalPerMin

/** Gas that leaves the pump with the flow, by the primer and by venting, at the eye's pressure, [gpm]. */
export const gasOut_gpm = (state: DrillState): number =>
  state.flow_gpm * state.carriedShare + state.primer_gpm * state.primerGasShare + state.vent_gpm

/**
 * Finds the pressure at the pump's eye, and cuts the flow to what can be supplied when that
 * is the cavitation limit. Leaves pressure and flows in the state.
 */
export function settleEye(rig: DrillRig, state: DrillState, controls: DrillControls, step_min: number): void {
  const lowest_ft = rig.cavitation_absolute_ft
  const missing_gal = -overfill_gal(rig, state, controls, lowest_ft, step_min)
  state.isCavitating = missing_gal > NOTHING_GAL
  if (state.isCavitating) {
    state.flow_gpm = Math.max(0, state.flow_gpm - missing_gal / step_min)
    state.eye_absolute_ft = lowest_ft
    return
  }
  // A tight casing with nothing moving stands at any pressure: it keeps the one it has.
  let over = overfill_gal(rig, state, controls, state.eye_absolute_ft, step_min)
  if (Math.abs(over) < NOTHING_GAL) return

  // Regula falsi between a pressure that overfills and one that does not, the kept end's weight halved
  // each time it stays (Illinois), so that both ends close in.
  let low_ft = lowest_ft
  let lowOver = -missing_gal
  // Nothing pushes harder than the tank or the hose's pocket: above them lies a plateau where all is still.
  let high_ft = Math.max(rig.atmosphere_absolute_ft, state.hoseTop_absolute_ft) +
    (controls.tankToPump > 0 ? tankHead_ft(rig, state.tankWater_gal) : 0)
  let highOver = 0
  if (over > 0) {
    low_ft = Math.min(state.eye_absolute_ft, high_ft)
    lowOver = over
    highOver = overfill_gal(rig, state, controls, high_ft, step_min)
  } else {
    high_ft = state.eye_absolute_ft
    highOver = over
  }
  let eye_ft = high_ft
  let side = 0
  for (let count = 0; count < MOST_TRIES && high_ft - low_ft > NOTHING_FT; count++) {
    const falsi_ft = highOver < 0 && lowOver > 0 ? (low_ft * highOver - high_ft * lowOver) / (highOver - lowOver) : (low_ft + high_ft) / 2
    // Every fourth try halves, so that a square root's steep foot cannot hold it up.
    eye_ft = count % 4 === 3 || !(falsi_ft > low_ft && falsi_ft < high_ft) ? (low_ft + high_ft) / 2 : falsi_ft
    over = overfill_gal(rig, state, controls, eye_ft, step_min)
    if (Math.abs(over) < NOTHING_GAL) break
    if (over > 0) {
      low_ft = eye_ft
      lowOver = over
      if (side === 1) highOver /= 2
      side = 1
    } else {
      high_ft = eye_ft
      highOver = over
      if (side === -1) lowOver /= 2
      side = -1
    }
  }
  state.eye_absolute_ft = eye_ft
}
