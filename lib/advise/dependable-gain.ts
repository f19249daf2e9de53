import { dependableFlow, NIGHT_COUNT, prepareDoubt } from '../doubt'
import type { CompiledPlan } from '../supply'
import type { Progress } from './progress'
import { changedPlan, type Baseline, type Trial } from './trial'
import type { ResolveWays } from './ways-with-closure'

/** Dependable flow of the plan, and with each change by its id. */
export type DependableGains = { readonly base_gpm: number; readonly after_gpm: ReadonlyMap<string, number>; readonly nightCount: number }

/**
 * What changes do to the dependable flow, on the same nights as the plan as it is: chance is addressed by what it is drawn
 * for (lib/random.ts), so whatever a change leaves alone meets the same night in both. They are the nights of the plan's own
 * answer, so what it starts from is the dependable flow of its headline, to the bit.
 *
 * @param trials in the order in which they are wanted
 * @returns a generator whose yields are what is known so far
 */
export function* dependableGains(base: Baseline, trials: readonly Trial[], resolve: ResolveWays): Generator<Progress & { soFar: DependableGains }, DependableGains> {
  const base_gpm = dependableOf(base.compiled) ?? 0
  const after_gpm = new Map<string, number>()
  const known = (): DependableGains => ({ base_gpm, after_gpm: new Map(after_gpm), nightCount: NIGHT_COUNT })
  for (const [index, { candidate }] of trials.entries()) {
    yield { doneShare: (index + 1) / (trials.length + 1), soFar: known() }
    const changed = changedPlan(base, candidate, resolve)
    if ('because' in changed) continue
    const flow_gpm = dependableOf(changed)
    if (flow_gpm !== undefined) after_gpm.set(candidate.id, flow_gpm)
  }
  return known()
}

/** Dependable flow of a plan, by the nights of its own answer; undefined when something blocks it. */
export function dependableOf(compiled: CompiledPlan): number | undefined {
  const model = prepareDoubt(compiled)
  return model && dependableFlow(model).flow_gpm
}
