import { troubleCodes } from './events'
import { movementsOf } from './movements'
import type { Drill } from './drill'

export type DrillScore = {
  readonly isGoalMet: boolean
  readonly time_s: number
  /** Tank water that is gone: spilled, run down the suction, discharged from the tank, through the primer. */
  readonly water_gal: number
  readonly moveCount: number
  readonly troubleCount: number
  /** 0 to 100; 0 unless the goal was met. */
  readonly points: number
  readonly parts: { readonly promptPoints: number; readonly thriftPoints: number; readonly movePoints: number; readonly orderPoints: number }
}

const TIME_POINTS = 40
const WATER_POINTS = 20
const MOVE_POINTS = 10
const CLEAN_POINTS = 30
const POINTS_PER_TROUBLE = 10

/** Full marks at par or better, then in proportion to par over what it took. */
const against = (par: number, took: number, points: number): number => (took <= par ? points : (points * par) / took)

/**
 * Score of a run by time, water, movements and trouble, against the scenario's par.
 * The weights are judgement and say so on the screen.
 */
export function scoreDrill(drill: Drill): DrillScore {
  const { state, scenario, rig } = drill
  const start_gal = scenario.start(rig).tankWater_gal
  const water_gal = Math.max(0, start_gal - state.tankWater_gal) + state.overflow_gal + state.primerWater_gal
  const moveCount = movementsOf(scenario.controls, drill.moves).length
  const troubleCount = drill.events.filter(({ code }) => troubleCodes.includes(code)).length
  const gaveUp = drill.events.some(({ code }) => code === 'gave-up')
  const isGoalMet = scenario.goal.kind === 'hold-draft'
    ? drill.events.some(({ code }) => code === 'goal-met')
    : gaveUp && start_gal - state.tankWater_gal <= scenario.goal.mostTankUsedShare * rig.tank_gal
  const parts = isGoalMet ? {
    promptPoints: against(scenario.par.time_s, state.time_s, TIME_POINTS),
    thriftPoints: against(scenario.par.water_gal, water_gal, WATER_POINTS),
    movePoints: against(scenario.par.moveCount, moveCount, MOVE_POINTS),
    orderPoints: Math.max(0, CLEAN_POINTS - POINTS_PER_TROUBLE * troubleCount),
  } : { promptPoints: 0, thriftPoints: 0, movePoints: 0, orderPoints: 0 }
  return { isGoalMet, time_s: state.time_s, water_gal, moveCount, troubleCount, parts,
    points: Math.round(parts.promptPoints + parts.thriftPoints + parts.movePoints + parts.orderPoints) }
}
