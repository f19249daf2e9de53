import type { Criterion } from '../../plan'
import type { CompiledPlan } from '../compile-plan'
import { holdFlow, type ShortCause } from './hold-flow'

/** The user's own criterion, answered. Times are seconds from dispatch. */
export type CriterionAnswer = {
  readonly criterion: Criterion
  readonly end_s: number
  readonly verdict: 'pass' | 'fail'
  /** When it fails: the first moment less than the flow is there. */
  readonly fails_s?: number
  readonly why?: ShortCause
  readonly subjectIds: readonly string[]
}

/**
 * Whether the plan gives a stated flow by a stated time after dispatch and keeps it for a stated time.
 *
 * @returns undefined when the plan states none
 */
export function checkCriterion(compiled: CompiledPlan): CriterionAnswer | undefined {
  const { criterion } = compiled.bundle.plan
  if (!criterion) return undefined
  const end_s = criterion.by_s + criterion.for_s
  const held = holdFlow(compiled, [{ from_s: criterion.by_s, flow_gpm: criterion.flow_gpm }], end_s)
  return held.isHeld
    ? { criterion, end_s, verdict: 'pass', subjectIds: [] }
    : { criterion, end_s, verdict: 'fail', fails_s: held.short_s, why: held.why, subjectIds: held.subjectIds }
}
