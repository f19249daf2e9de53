import { compileShuttle, runShuttle, sustainableFlow, type HeldFlow, type ShuttleSpec } from '../shuttle'
import { pumpCapacity_gpm, type CompiledPlan } from '../supply'

/** The figures that changes are compared by. */
export type Figures = {
  /** Sustainable flow at the fire ground, no more than the pumpers at the dump sites send on. */
  readonly flow_gpm: number
  readonly hauled_gpm: number
  /** Supply ready under the planned demand, after dispatch; null: never within the run. */
  readonly ready_s: number | null
  readonly limitedBy: HeldFlow['limitedBy'] | 'pump'
}

/** Figures of a plan that is worked out as far as numbers, by the same search as the plan's own answer. */
export function figuresOf(compiled: CompiledPlan): Figures | undefined {
  return compiled.spec && figuresOfSpec(compiled.spec, pumpCapacity_gpm(compiled))
}

/** @param pump_gpm no more than this reaches the fire ground */
export function figuresOfSpec(spec: ShuttleSpec, pump_gpm: number): Figures {
  const scenario = compileShuttle(spec)
  const held = sustainableFlow(scenario)
  return {
    flow_gpm: Math.min(held.flow_gpm, pump_gpm),
    hauled_gpm: held.haul.hauledCapacity_gpm,
    ready_s: runShuttle(scenario).supplyReady_s ?? null,
    limitedBy: held.flow_gpm > pump_gpm ? 'pump' : held.limitedBy,
  }
}
