import { FIRE_GROUND } from '../plan'
import type { CompiledPlan } from './compile-plan'

/**
 * What all pumpers at the dump sites together send on, and hose lays straight to the fire ground beside them; no more reaches it. [gpm]
 *
 * @param at_s the moment; absent: when the last pumper at a dump site is set, the earliest that all supply can be ready
 */
export function pumpCapacity_gpm({ dumps, lays }: Pick<CompiledPlan, 'dumps' | 'lays'>, at_s = Math.max(0, ...dumps.map(({ spec }) => spec.pumpReady_s))): number {
  const direct_gpm = lays.reduce((sum, { lay, ready_s, flow_gpm }) => (lay.toId === FIRE_GROUND && ready_s <= at_s ? sum + flow_gpm : sum), 0)
  return dumps.reduce((sum, { pump_gpm }) => sum + pump_gpm, 0) + direct_gpm
}
