'use client'

import { useCallback, useEffect, useState } from 'react'
import type { Advice, DependableGains, RequestAsk, RequestList } from '@/lib/advise'
import { issue, type Issue } from '@/lib/issue'
import type { Bundle } from '@/lib/plan'
import { getAdviser } from './adviser'

export type WorkState = 'working' | 'done' | 'stopped' | 'failed'

export type AdviceState = {
  state: WorkState
  stage: 'trying' | 'doubting'
  doneShare: number
  /** Absent until it is there; `null` when something blocks the plan's answer. */
  advice?: Advice | null
  dependable?: DependableGains
  failure?: Issue
  stop: () => void
  again: () => void
}

type Held = Pick<AdviceState, 'state' | 'stage' | 'doneShare' | 'advice' | 'dependable' | 'failure'> & { of: string }

const begun = (of: string): Held => ({ of, state: 'working', stage: 'trying', doneShare: 0 })
const failureOf = (bundle: Bundle, error: unknown): Issue => issue('answer-failed', 'block', [bundle.plan.id], { reason: String(error) })

/**
 * Advice on a plan, worked out in a worker of its own. A change of the bundle begins anew; leaving ends it.
 *
 * @param bundle with every way the plan drives, the same object until it changes; undefined while it loads
 */
export function useAdvice(bundle: Bundle | undefined): AdviceState {
  const [turn, setTurn] = useState(0)
  const [held, setHeld] = useState<Held & { bundle?: Bundle }>(begun(''))
  const of = `${turn}`

  useEffect(() => {
    if (!bundle) return
    let isGone = false
    const tell = (change: (before: Held) => Partial<Held>) => {
      if (isGone) return
      setHeld((before) => {
        const own = before.bundle === bundle && before.of === of ? before : { ...begun(of), bundle }
        return { ...own, ...change(own) }
      })
    }
    getAdviser()
      .advise(bundle, (part) => {
        if (part.kind === 'progress') tell(() => ({ stage: part.stage, doneShare: part.doneShare }))
        else if (part.kind === 'advice') tell(() => ({ advice: part.advice ?? null, stage: 'doubting', doneShare: 0 }))
        else tell(() => ({ dependable: part.gains }))
      })
      .then((isDone) => { if (isDone) tell(() => ({ state: 'done', doneShare: 1 })) })
      .catch((error: unknown) => { tell(() => ({ state: 'failed', failure: failureOf(bundle, error) })) })
    return () => {
      isGone = true
      void getAdviser().stop().catch(() => undefined)
    }
  }, [bundle, of])

  const stop = useCallback(() => {
    void getAdviser().stop().catch(() => undefined)
    setHeld((before) => ({ ...before, state: 'stopped' }))
  }, [])
  const again = useCallback(() => { setTurn((before) => before + 1) }, [])
  const isCurrent = held.bundle === bundle && held.of === of
  const { state, stage, doneShare, advice, dependable, failure } = isCurrent ? held : begun(of)
  return { state, stage, doneShare, ...(advice !== undefined && { advice }), ...(dependable && { dependable }), ...(failure && { failure }), stop, again }
}

export type RequestState = {
  state: WorkState
  doneShare: number
  list?: RequestList
  issues: readonly Issue[]
  stop: () => void
  again: () => void
}

type Requested = { bundle?: Bundle | undefined; of: string; state: WorkState; doneShare: number; list?: RequestList; issues: readonly Issue[] }

/** Whom to ask for a flow by a time, worked out in the adviser's worker; undefined while either is not known. */
export function useRequest(bundle: Bundle | undefined, ask: RequestAsk | undefined): RequestState {
  const [turn, setTurn] = useState(0)
  const [held, setHeld] = useState<Requested>({ of: '', state: 'working', doneShare: 0, issues: [] })
  const of = `${turn} ${ask?.flow_gpm ?? ''} ${ask?.by_s ?? ''}`
  const [flow_gpm, by_s] = [ask?.flow_gpm, ask?.by_s]

  useEffect(() => {
    if (!bundle || flow_gpm === undefined || by_s === undefined) return
    let isGone = false
    const base: Requested = { bundle, of, state: 'working', doneShare: 0, issues: [] }
    const tell = (next: Partial<Requested>) => { if (!isGone) setHeld({ ...base, ...next }) }
    getAdviser()
      .request(bundle, { flow_gpm, by_s }, (doneShare) => { tell({ doneShare }) })
      .then((made) => { if (made) tell({ state: 'done', doneShare: 1, ...(Array.isArray(made) ? { issues: made } : { list: made }) }) })
      .catch((error: unknown) => { tell({ state: 'failed', issues: [failureOf(bundle, error)] }) })
    return () => {
      isGone = true
      void getAdviser().stop().catch(() => undefined)
    }
  }, [bundle, of, flow_gpm, by_s])

  const stop = useCallback(() => {
    void getAdviser().stop().catch(() => undefined)
    setHeld((before) => ({ ...before, state: 'stopped' }))
  }, [])
  const again = useCallback(() => { setTurn((before) => before + 1) }, [])
  const isCurrent = held.bundle === bundle && held.of === of
  return { ...(isCurrent ? held : { state: 'working' as const, doneShare: 0, issues: [] }), stop, again }
}
