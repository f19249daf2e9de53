'use client'

import { useCallback, useEffect, useState } from 'react'
import type { DoubtAnswer } from '@/lib/doubt'
import { issue, type Issue } from '@/lib/issue'
import type { Bundle } from '@/lib/plan'
import { getDoubtPool } from './get-doubt-pool'

export type DoubtState = {
  /** The newest there is; of an earlier state of the plan while `isOld`. */
  answer?: DoubtAnswer
  isOld: boolean
  /** Part of the nights done; absent when none are under way. */
  progressShare?: number
  issue?: Issue
  stop: () => void
  start: () => void
}

/**
 * How sure the answer to a plan is, worked out by the pool. A change of the plan stops it and begins anew.
 *
 * @param bundle with its ways; the same object until the plan changes; undefined while there is nothing to doubt
 */
export function useDoubt(bundle: Bundle | undefined): DoubtState {
  const [found, setFound] = useState<{ of: Bundle; answer: DoubtAnswer }>()
  const [failure, setFailure] = useState<{ of: Bundle; issue: Issue }>()
  const [progress, setProgress] = useState<{ of: Bundle; share: number }>()
  const [stoppedFor, setStoppedFor] = useState<Bundle>()
  const isStopped = stoppedFor === bundle

  useEffect(() => {
    if (!bundle || isStopped) return
    const ending = new AbortController()
    const { signal } = ending
    getDoubtPool().whole(bundle, { signal, onProgress: (share) => { setProgress({ of: bundle, share }) } })
      .then((answer) => { if (answer && !signal.aborted) setFound({ of: bundle, answer }) })
      .catch((error: unknown) => { if (!signal.aborted) setFailure({ of: bundle, issue: issue('answer-failed', 'block', [bundle.plan.id], { reason: String(error) }) }) })
    return () => { ending.abort() }
  }, [bundle, isStopped])

  const stop = useCallback(() => { setStoppedFor(bundle) }, [bundle])
  const start = useCallback(() => { setStoppedFor(undefined) }, [])
  const answer = found && bundle && found.of.plan.id === bundle.plan.id ? found.answer : undefined
  const isOld = answer !== undefined && found?.of !== bundle
  const isRunning = bundle !== undefined && !isStopped && found?.of !== bundle && failure?.of !== bundle
  return {
    answer, isOld, stop, start,
    ...(isRunning && { progressShare: progress?.of === bundle ? progress.share : 0 }),
    ...(failure && failure.of === bundle && { issue: failure.issue }),
  }
}
