'use client'

import { useCallback, useEffect, useState } from 'react'
import type { InjectAnswer } from '@/lib/exercise'
import type { Bundle, Fact } from '@/lib/plan'
import { getReferee } from './referee'

export type BestAsk = { readonly bundle: Bundle; readonly facts: readonly Fact[]; readonly to_s: number }
export type BestState = { state: 'idle' | 'working' | 'done' | 'stopped' | 'failed'; doneShare: number; answers?: readonly InjectAnswer[]; stop: () => void; again: () => void }

type Held = { ask: BestAsk; turn: number; state: BestState['state']; doneShare: number; answers?: readonly InjectAnswer[] }

/**
 * The best that could have been decided on each inject, worked out in the worker of exercises.
 *
 * @param ask the same object until another is meant; undefined while nothing is asked
 */
export function useBestAnswers(ask: BestAsk | undefined): BestState {
  const [turn, setTurn] = useState(0)
  const [held, setHeld] = useState<Held>()
  useEffect(() => {
    if (!ask) return
    let isGone = false
    const tell = (next: Partial<Held>) => { if (!isGone) setHeld({ ask, turn, state: 'working', doneShare: 0, ...next }) }
    getReferee()
      .best(ask.bundle, ask.facts, ask.to_s, (doneShare) => { tell({ doneShare }) })
      .then((answers) => { if (answers) tell({ state: 'done', doneShare: 1, answers }) })
      .catch(() => { tell({ state: 'failed' }) })
    return () => {
      isGone = true
      void getReferee().stop().catch(() => undefined)
    }
  }, [ask, turn])
  const stop = useCallback(() => {
    void getReferee().stop().catch(() => undefined)
    setHeld((before) => before && { ...before, state: 'stopped' })
  }, [])
  const again = useCallback(() => { setTurn((before) => before + 1) }, [])
  const own = held && held.ask === ask && held.turn === turn ? held : undefined
  return { state: own?.state ?? (ask ? 'working' : 'idle'), doneShare: own?.doneShare ?? 0, ...(own?.answers && { answers: own.answers }), stop, again }
}
