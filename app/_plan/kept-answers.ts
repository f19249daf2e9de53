import { useEffect, useMemo, useSyncExternalStore } from 'react'
import type { District, Plan } from '@/lib/plan'
import { shortHash, type SupplyResult } from '@/lib/supply'
import { keptList } from '../_ui/kept-list'
import type { PlanAnswerState } from '../_worker'

/** Raised whenever plans are answered differently: what was kept before is no answer any more. */
const ANSWER_MODEL = 1

/** The flow of a plan as this device last had it, for a list that cannot answer every plan anew. */
export type KeptAnswer = {
  planId: string
  /** Of the very plan and district that were answered. */
  key: string
  /** Absent where the plan is blocked. */
  expected_gpm?: number
  dependable_gpm?: number
}

/** By hand: a schema would bring its library into the first script of the planner. */
function isKeptAnswer(one: unknown): one is KeptAnswer {
  const { planId, key, expected_gpm, dependable_gpm } = (one ?? {}) as Record<keyof KeptAnswer, unknown>
  return typeof planId === 'string' && typeof key === 'string' && [expected_gpm, dependable_gpm].every((flow) => flow === undefined || typeof flow === 'number')
}

const none: readonly KeptAnswer[] = []
/** Of this many plans, those answered last. */
const answers = keptList<KeptAnswer>('millrace-plan-answers', { most: 200, findItem: (one) => (isKeptAnswer(one) ? one : undefined) })

/** Of documents as they are in this window, which never change in place: each is written out once. */
const hashes = new WeakMap<object, string>()

function hashOf(document: District | Plan): string {
  const hash = hashes.get(document) ?? shortHash(JSON.stringify(document))
  hashes.set(document, hash)
  return hash
}

const keyOf = (districtHash: string, plan: Plan): string => `${ANSWER_MODEL}.${districtHash}.${hashOf(plan)}`

/** Keeps what a plan gives, where the device keeps anything. */
export function keepAnswer(district: District, plan: Plan, { sustainable_gpm, dependable }: Pick<SupplyResult, 'sustainable_gpm' | 'dependable'>): void {
  const made: KeptAnswer = { planId: plan.id, key: keyOf(hashOf(district), plan), ...(sustainable_gpm !== null && { expected_gpm: sustainable_gpm }), ...(dependable && { dependable_gpm: dependable.flow_gpm }) }
  answers.write([made, ...answers.read().filter(({ planId }) => planId !== plan.id)])
}

/** What is kept of plans as they are now: of one that was changed since, or whose district was, nothing. */
export function keptAnswersOf(district: District | undefined, plans: readonly Plan[], kept: readonly KeptAnswer[] = answers.read()): ReadonlyMap<string, KeptAnswer> {
  if (!district || kept.length === 0) return new Map()
  const districtHash = hashOf(district)
  const byPlan = new Map(kept.map((one) => [one.planId, one]))
  return new Map(plans.flatMap((plan) => {
    const found = byPlan.get(plan.id)
    return found?.key === keyOf(districtHash, plan) ? [[plan.id as string, found] as const] : []
  }))
}

/** The same for a screen. */
export function useKeptAnswers(district: District | undefined, plans: readonly Plan[]): ReadonlyMap<string, KeptAnswer> {
  const kept = useSyncExternalStore(answers.listen, answers.read, () => none)
  return useMemo(() => keptAnswersOf(district, plans, kept), [district, plans, kept])
}

/** Keeps the answer of the plan on screen once it is whole, and again once it is tested for doubt. */
export function useKeepAnswer(district: District | undefined, plan: Plan | undefined, { result, pending }: Pick<PlanAnswerState, 'result' | 'pending'>): void {
  const isWhole = !pending.answer && !pending.limitingLink
  useEffect(() => {
    if (district && plan && result?.planId === plan.id && isWhole) keepAnswer(district, plan, result)
  }, [district, plan, result, isWhole])
}
