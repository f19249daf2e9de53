'use client'

import { useEffect, useMemo, useState } from 'react'
import { firstToMeasure, type DoubtAnswer } from '@/lib/doubt'
import { issue, type Issue } from '@/lib/issue'
import type { Bundle, Leg, NoLeg } from '@/lib/plan'
import type { LegUse, SupplyResult } from '@/lib/supply'
import { findKeptDoubt, getDoubtPool } from './get-doubt-pool'
import { getPlanner } from './planner'
import type { PlanAnswer } from './planner-engine'

export type PlanAnswerState = {
  /** The newest answer there is; of an earlier state of the plan while `pending.answer`. Its dependable flow, and with it what to measure first, comes later than the rest. */
  result?: SupplyResult
  legs: readonly (Leg | NoLeg)[]
  uses: readonly LegUse[]
  /** What stands in the way of finding roads; what the answer itself has to say is in `result.issues`. */
  issues: readonly Issue[]
  pending: { answer: boolean; limitingLink: boolean }
}

const none: PlanAnswerState = { legs: [], uses: [], issues: [], pending: { answer: true, limitingLink: true } }

/**
 * The answer to a plan, worked out in the worker: figures at once, the limiting link after
 * them. A change of the bundle asks anew; the last answer stays meanwhile, marked pending.
 *
 * @param bundle the same object until a document changes; undefined while they load
 */
export function usePlanAnswer(bundle: Bundle | undefined): PlanAnswerState {
  const [answer, setAnswer] = useState<{ of: Bundle; given: PlanAnswer } | undefined>()
  const [failure, setFailure] = useState<{ of: Bundle; issue: Issue } | undefined>()

  // Its workers start while the documents are still on their way.
  useEffect(() => { getPlanner() }, [])
  useEffect(() => {
    if (!bundle) return
    let isGone = false
    getPlanner()
      .answer(bundle, (given) => !isGone && setAnswer({ of: bundle, given }))
      .catch((error: unknown) => !isGone && setFailure({ of: bundle, issue: issue('answer-failed', 'block', [bundle.plan.id], { reason: String(error) }) }))
    return () => {
      isGone = true
    }
  }, [bundle])

  const nights = useNights(bundle, answer?.of === bundle ? answer?.given : undefined)
  const result = useMemo(() => answer && (nights?.of === answer.given ? { ...answer.given.result, ...nights.figures } : answer.given.result), [answer, nights])

  if (failure && failure.of === bundle) return { ...none, issues: [failure.issue], pending: { answer: false, limitingLink: false } }
  if (!bundle || !answer || answer.of.plan.id !== bundle.plan.id) return none
  const { given, of } = answer
  const isOld = of !== bundle
  return { result, legs: given.legs, uses: given.uses, issues: given.issues, pending: { answer: isOld, limitingLink: isOld || given.isQuick } }
}

/** The page has been still for so long before nights are drawn. */
const IDLE_MS = 500

type Nights = { of: PlanAnswer; figures: Pick<SupplyResult, 'dependable' | 'firstToMeasure'> }

const nightsOf = (of: PlanAnswer, doubt: DoubtAnswer): Nights => ({ of, figures: { dependable: doubt.dependable, firstToMeasure: firstToMeasure(doubt.ofFlow) } })

/**
 * What the nights add to a whole answer, worked out while the page is idle; undefined until then. The same nights as on the page that asks
 * how sure it is. Those that another page of the plan has had stand from the first moment: what was tested there is not untested here.
 */
function useNights(bundle: Bundle | undefined, given: PlanAnswer | undefined): Nights | undefined {
  const [found, setFound] = useState<Nights>()
  const kept = useMemo(() => {
    const doubt = bundle && given && given.result.sustainable_gpm !== null ? findKeptDoubt({ ...bundle, legs: [...given.legs] }) : undefined
    return given && doubt && nightsOf(given, doubt)
  }, [bundle, given])
  const isKept = kept !== undefined
  useEffect(() => {
    if (isKept || !bundle || !given || given.isQuick || given.result.sustainable_gpm === null) return
    const ending = new AbortController()
    const timer = setTimeout(() => {
      // A pool that cannot start leaves the answer without these figures; the rest of it stands.
      getDoubtPool().whole({ ...bundle, legs: [...given.legs] }, { signal: ending.signal })
        .then((doubt) => {
          if (doubt && !ending.signal.aborted) setFound(nightsOf(given, doubt))
        }, () => undefined)
    }, IDLE_MS)
    return () => {
      clearTimeout(timer)
      ending.abort()
    }
  }, [isKept, bundle, given])
  return kept ?? found
}
