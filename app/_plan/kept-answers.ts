import { useEffect, useMemo, useSyncExternalStore } from 'react'
import type { District, Plan } from '@/lib/plan'
import { shortHash, type SupplyResult } from '@/lib/supply'
import type { PlanAnswerState } from '../_worker'

/** Raised whenever plans are answered differently: what was kept before is no answer any more. */
const ANSWER_MODEL = 1
const STORE_KEY = 'millrace-plan-answers'
/** Of this many plans, those answered last. */
const MOST_PLANS = 200

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
const isKeptAnswer = (one: Partial<Record<keyof KeptAnswer, unknown>> | null): one is KeptAnswer =>
  typeof one?.planId === 'string' && typeof one.key === 'string' && [one.expected_gpm, one.dependable_gpm].every((flow) => flow === undefined || typeof flow === 'number')

const none: readonly KeptAnswer[] = []
let lastText = ''
let lastKept = none
const listeners = new Set<() => void>()

function readKept(): readonly KeptAnswer[] {
  let text = ''
  try {
    text = localStorage.getItem(STORE_KEY) ?? ''
  } catch {
    // Storage is forbidden on this device: nothing is kept.
  }
  if (text !== lastText) {
    lastText = text
    lastKept = parseKept(text)
  }
  return lastKept
}

function parseKept(text: string): readonly KeptAnswer[] {
  try {
    const read: unknown = text === '' ? [] : JSON.parse(text)
    return Array.isArray(read) ? read.filter(isKeptAnswer) : none
  } catch {
    return none
  }
}

const hashOf = (document: unknown): string => shortHash(JSON.stringify(document))
const keyOf = (districtHash: string, plan: Plan): string => `${ANSWER_MODEL}.${districtHash}.${hashOf(plan)}`

/** Keeps what a plan gives, where the device keeps anything. */
export function keepAnswer(district: District, plan: Plan, { sustainable_gpm, dependable }: Pick<SupplyResult, 'sustainable_gpm' | 'dependable'>): void {
  const made: KeptAnswer = { planId: plan.id, key: keyOf(hashOf(district), plan), ...(sustainable_gpm !== null && { expected_gpm: sustainable_gpm }), ...(dependable && { dependable_gpm: dependable.flow_gpm }) }
  try {
    localStorage.setItem(STORE_KEY, JSON.stringify([made, ...readKept().filter(({ planId }) => planId !== plan.id)].slice(0, MOST_PLANS)))
  } catch {
    return
  }
  for (const listener of listeners) listener()
}

/** What is kept of plans as they are now: of one that was changed since, or whose district was, nothing. */
export function keptAnswersOf(district: District | undefined, plans: readonly Plan[], kept: readonly KeptAnswer[] = readKept()): ReadonlyMap<string, KeptAnswer> {
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
  const kept = useSyncExternalStore(listen, readKept, () => none)
  return useMemo(() => keptAnswersOf(district, plans, kept), [district, plans, kept])
}

function listen(listener: () => void): () => void {
  listeners.add(listener)
  window.addEventListener('storage', listener)
  return () => {
    listeners.delete(listener)
    window.removeEventListener('storage', listener)
  }
}

/** Keeps the answer of the plan on screen once it is whole, and again once it is tested for doubt. */
export function useKeepAnswer(district: District | undefined, plan: Plan | undefined, { result, pending }: Pick<PlanAnswerState, 'result' | 'pending'>): void {
  const isWhole = !pending.answer && !pending.limitingLink
  useEffect(() => {
    if (district && plan && result?.planId === plan.id && isWhole) keepAnswer(district, plan, result)
  }, [district, plan, result, isWhole])
}
