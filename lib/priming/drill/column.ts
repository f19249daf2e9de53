import type { DrillRig } from './rig'
import type { DrillControls, DrillState } from './state'
import { signedRoot } from './laws'

/** The pocket counts as gone when it is this part of the hose: what is left rides along with the water. */
const POCKET_END_SHARE = 0.005
const NOTHING_GPM = 1e-7

/**
 * Moves the water in the suction hose one step, after the eye has settled: the pocket's air
 * as a spring above a column that the atmosphere pushes up. Implicit, because a small
 * pocket is a stiff spring.
 */
export function moveColumn(rig: DrillRig, state: DrillState, controls: DrillControls, step_min: number): void {
  const atmosphere_ft = rig.atmosphere_absolute_ft
  if (state.isColumnFull) {
    moveFullColumn(rig, state, controls, step_min)
    return
  }
  const entering_gal = -state.intakeWater_gpm * step_min
  const leak = state.leakAir_gpm * step_min * atmosphere_ft
  state.hoseAir_ftGal = Math.max(0, state.hoseAir_ftGal - state.pocketAir_ftGalPerMin * step_min + leak)
  state.airIn_ftGal += leak
  state.lostDown_gal += entering_gal
  state.hoseWater_gal += entering_gal

  state.column_gpm = settleColumn_gpm(rig, state, step_min)
  const air_gpm = Math.max(0, state.column_gpm) * state.strainerAirShare
  const rise_gal = (state.column_gpm - air_gpm) * step_min
  state.hoseAir_ftGal += air_gpm * step_min * atmosphere_ft
  state.airIn_ftGal += air_gpm * step_min * atmosphere_ft
  state.hoseWater_gal = Math.max(0, state.hoseWater_gal + rise_gal)
  state.drawn_gal += rise_gal

  // Air pushed down past the strainer bubbles off into the source.
  if (state.hoseWater_gal <= 1e-9 && state.hoseAir_ftGal > atmosphere_ft * rig.hose_gal) {
    state.airOut_ftGal += state.hoseAir_ftGal - atmosphere_ft * rig.hose_gal
    state.hoseAir_ftGal = atmosphere_ft * rig.hose_gal
  }
  const pocket_gal = rig.hose_gal - state.hoseWater_gal
  if (pocket_gal < POCKET_END_SHARE * rig.hose_gal && controls.intake > 0 && state.eye_absolute_ft < atmosphere_ft - state.lift_ft) {
    state.pumpAir_ftGal += state.hoseAir_ftGal
    state.hoseAir_ftGal = 0
    state.drawn_gal += pocket_gal
    state.hoseWater_gal = rig.hose_gal
    state.isColumnFull = true
  }
  state.hoseTop_absolute_ft = state.isColumnFull ? atmosphere_ft - state.lift_ft : state.hoseAir_ftGal / (rig.hose_gal - state.hoseWater_gal)
}

/** By how much the atmosphere would drive the column faster than this flow, [gpm]. Falls as the flow rises. */
function columnSlack_gpm(rig: DrillRig, state: DrillState, flow_gpm: number, step_min: number): number {
  const water_gal = state.hoseWater_gal + flow_gpm * step_min
  const pocket_gal = Math.max(1e-12, rig.hose_gal - water_gal)
  const drive_ft = rig.atmosphere_absolute_ft - state.hoseAir_ftGal / pocket_gal - (state.lift_ft * water_gal) / rig.hose_gal
  return rig.suction_gpmPerSqrtFt * signedRoot(drive_ft) - flow_gpm
}

/** The column's flow at the strainer at which drive and flow agree at the step's end, between empty and full. */
function settleColumn_gpm(rig: DrillRig, state: DrillState, step_min: number): number {
  let low = -state.hoseWater_gal / step_min
  let high = (rig.hose_gal - state.hoseWater_gal) / step_min
  if (columnSlack_gpm(rig, state, high, step_min) >= 0) return high
  if (columnSlack_gpm(rig, state, low, step_min) <= 0) return low
  // Most steps barely change the flow: close in around the last one first.
  let reach = 1
  for (let count = 0; count < 12; count++, reach *= 4) {
    const below = state.column_gpm - reach
    const above = state.column_gpm + reach
    if (below > low && below < high && columnSlack_gpm(rig, state, below, step_min) > 0) low = below
    if (above < high && above > low && columnSlack_gpm(rig, state, above, step_min) <= 0) high = above
    if (high - low <= 2 * reach) break
  }
  while (high - low > NOTHING_GPM) {
    const middle = (low + high) / 2
    if (columnSlack_gpm(rig, state, middle, step_min) > 0) low = middle
    else high = middle
    if (middle === low && middle === high) break
  }
  return (low + high) / 2
}

/** A column that stands at the valve: water through it, or a pocket that starts again. */
function moveFullColumn(rig: DrillRig, state: DrillState, controls: DrillControls, step_min: number): void {
  const loss_ft = state.intakeWater_gpm > 0 ? (state.intakeWater_gpm / rig.suction_gpmPerSqrtFt) ** 2 : 0
  state.hoseTop_absolute_ft = Math.max(rig.cavitation_absolute_ft, rig.atmosphere_absolute_ft - state.lift_ft - loss_ft)
  if (state.intakeWater_gpm > 0) {
    state.column_gpm = state.intakeWater_gpm
    state.drawn_gal += state.intakeWater_gpm * step_min
    return
  }
  // Pump water runs down; gas from the pump, or from a drain above a shut valve, starts a pocket.
  const down_gal = -state.intakeWater_gpm * step_min
  const leak = controls.intake > 0 ? 0 : state.leakAir_gpm * step_min * rig.atmosphere_absolute_ft
  const gas = leak - state.pocketAir_ftGalPerMin * step_min
  const gas_gal = gas / state.hoseTop_absolute_ft
  state.airIn_ftGal += leak
  state.lostDown_gal += down_gal
  state.drawn_gal -= down_gal + gas_gal
  state.column_gpm = -(down_gal + gas_gal) / step_min
  state.hoseAir_ftGal += gas
  state.hoseWater_gal -= gas_gal
  if (gas_gal > 0) state.isColumnFull = false
}
