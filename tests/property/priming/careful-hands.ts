import { advanceDrill, createDrill, type Drill, type DrillRig, type DrillScenario, type Hands } from '../../../lib/priming/drill'

/** A scenario with nothing changed and nothing wrong: the rig as it is given. */
export const plain = (tankShare: number): DrillScenario => ({
  code: 'primer-fails', change: () => ({}), start: (rig) => ({ tankWater_gal: tankShare * rig.tank_gal, pumpGasShare: 0 }),
  controls: { throttle: 0, tankToPump: 0, tankFill: 0, intake: 0, discharge: 0, primer: 0, drain: 0 },
  goal: { kind: 'hold-draft', flow_gpm: 100, pressure_psi: 50, hold_s: 10 }, par: { time_s: 150, water_gal: 40, moveCount: 14 }, most_s: 400,
})

const throttleFor = (rig: DrillRig, speedShare: number): number => (speedShare - rig.idleShare) / (1 - rig.idleShare)

/** The intake is opened from this time on, when the loop has settled. */
export const OPEN_FROM_S = 10

/** Hands that set up the loop and then open the intake no further than keeps the pump's gas at half its gas-lock share. */
export function carefulHands(rig: DrillRig, settings: { readonly speedShare: number; readonly tankToPump?: number; readonly tankFill?: number }): Hands {
  return (controls, state) => {
    controls.tankToPump = settings.tankToPump ?? 1
    controls.tankFill = settings.tankFill ?? 1
    controls.throttle = throttleFor(rig, settings.speedShare)
    if (state.time_s < OPEN_FROM_S) return
    controls.intake = Math.max(0.015, Math.min(1, controls.intake + (0.5 * rig.gasLockShare - state.gasShare) * 0.015))
  }
}

/** The same loop, but the intake thrown open. */
export function boldHands(rig: DrillRig, speedShare: number): Hands {
  return (controls, state) => {
    controls.tankToPump = 1
    controls.tankFill = 1
    controls.throttle = throttleFor(rig, speedShare)
    if (state.time_s >= OPEN_FROM_S) controls.intake = 1
  }
}

export type Played = { readonly drill: Drill; readonly full_s?: number; readonly mostColumn_ft: number; readonly mostGasShare: number }

/** Plays until the column is full or the time is over. */
export function playUntilFull(rig: DrillRig, tankShare: number, hands: Hands, until_s: number): Played {
  const drill = createDrill(rig, plain(tankShare))
  let mostColumn_ft = 0
  let mostGasShare = 0
  while (!drill.isOver && drill.state.time_s < until_s) {
    hands(drill.controls, drill.state)
    advanceDrill(drill)
    mostColumn_ft = Math.max(mostColumn_ft, (drill.state.lift_ft * drill.state.hoseWater_gal) / rig.hose_gal)
    mostGasShare = Math.max(mostGasShare, drill.state.gasShare)
    if (drill.state.isColumnFull) return { drill, full_s: drill.state.time_s, mostColumn_ft, mostGasShare }
  }
  return { drill, mostColumn_ft, mostGasShare }
}
