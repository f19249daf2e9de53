import { SECONDS_PER_MINUTE } from '../units'
import { AFTER_READY_S, compileShuttle, gridFor, sustainableFlow, type ShuttleSpec, type TripStage } from '../shuttle'
import type { CompiledPlan } from '../supply'
import { doubtInputs, type DoubtInput } from './input'
import { movesOf, planNumbers, PUMP } from './moves'
import { isMoment } from './spec-numbers'
import { withTripSpread } from './trip-spread'

/**
 * A plan made ready for nights by the thousand. Plain data, so that it can be sent to another
 * worker whole; the same plan gives the same model everywhere.
 */
export type DoubtModel = {
  readonly planId: string
  /** The plan as numbers, with the spread of single trips. */
  readonly spec: ShuttleSpec
  readonly pump_gpm: number
  /** Sustainable flow of the plan as it is, nothing varying. */
  readonly expected_gpm: number
  /** Flows are tried on this grid in every night, refined inside the step. */
  readonly grid_gpm: number
  /** Moments at which nights are looked at, from dispatch to the end of the time the flow is held for. */
  readonly times_s: readonly number[]
  readonly inputs: readonly DoubtInput[]
  /** Numbers that some input moves. */
  readonly numbers: readonly ModelNumber[]
  /** By input: its knots, and the numbers it moves with what it does to them, one a knot. */
  readonly moves: readonly { readonly knots: readonly number[]; readonly targets: readonly { readonly number: number; readonly changes: readonly number[] }[] }[]
}

export type ModelNumber = { readonly path: string; readonly planned: number; readonly adds: boolean }

export type ModelOptions = {
  /** Half the range of single trips by stage. Default `tripSpreadShare`. */
  readonly tripSpread?: Readonly<Partial<Record<TripStage, number>>>
  /** The inputs to doubt. Default all of the plan's. */
  readonly inputs?: readonly DoubtInput[]
}

/**
 * Works out what every doubt of a plan does to its numbers.
 *
 * @returns undefined when something blocks the plan's answer
 */
export function prepareDoubt(compiled: CompiledPlan, options: ModelOptions = {}): DoubtModel | undefined {
  const { spec, bundle } = compiled
  const planned = planNumbers(compiled)
  if (!spec || !planned) return undefined
  const pump_gpm = planned.get(PUMP) ?? 0
  const held = sustainableFlow(compileShuttle(spec))
  const inputs: DoubtInput[] = []
  const moves: DoubtModel['moves'][number][] = []
  const indexes = new Map<string, number>()
  const indexOf = (path: string): number => indexes.get(path) ?? (indexes.set(path, indexes.size), indexes.size - 1)
  for (const input of options.inputs ?? doubtInputs(compiled)) {
    const { knots, changes } = movesOf(compiled, input)
    if (changes.size === 0 && knots.length > 1) continue
    inputs.push(input)
    moves.push({ knots, targets: [...changes].map(([path, change]) => ({ number: indexOf(path), changes: change })) })
  }
  return {
    planId: bundle.plan.id,
    spec: withTripSpread(spec, options.tripSpread),
    pump_gpm,
    expected_gpm: Math.min(held.flow_gpm, pump_gpm),
    grid_gpm: gridFor(held.bound_gpm),
    times_s: clockFor(held.supplyReady_s ?? spec.horizon_s - AFTER_READY_S, spec.afterReady_s ?? AFTER_READY_S),
    inputs, moves,
    numbers: [...indexes.keys()].map((path) => ({ path, planned: planned.get(path) ?? 0, adds: isMoment(path) })),
  }
}

/** Looks a clock has at most; a minute apart where that suffices. */
const MOST_LOOKS = 300

/** Rising moments a minute apart, or a whole number of minutes where the run is long. */
function clockFor(ready_s: number, afterReady_s: number): number[] {
  const end_s = ready_s + afterReady_s
  const step_s = SECONDS_PER_MINUTE * Math.max(1, Math.ceil(end_s / SECONDS_PER_MINUTE / MOST_LOOKS))
  return Array.from({ length: Math.floor(end_s / step_s) + 1 }, (_, index) => index * step_s)
}
