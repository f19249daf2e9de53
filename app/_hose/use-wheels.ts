'use client'

import { wrap } from 'comlink'
import { useCallback, useEffect, useRef, useState } from 'react'
import type { HoseOrWheels } from '@/lib/advise/hose-or-wheels'
import { guardOf } from '../_worker/guard-worker'
import { withProgress } from '../_worker/with-progress'
import type { WheelsAsk, WheelsService } from './wheels.worker'

type Asks = { compare: (ask: WheelsAsk, onProgress: (doneShare: number) => void) => Promise<HoseOrWheels | undefined>; stop: () => Promise<void> }

let shared: Asks | undefined

function getAsks(): Asks {
  shared ??= startAsks()
  return shared
}

function startAsks(): Asks {
  const worker = new Worker(new URL('./wheels.worker.ts', import.meta.url))
  const guard = guardOf(worker)
  const service = wrap<WheelsService>(worker)
  return { compare: (ask, onProgress) => guard(withProgress(onProgress, async (tell) => service.compare(ask, tell))), stop: () => guard(service.stop()) }
}

export type WheelsState = {
  readonly state: 'idle' | 'working' | 'done' | 'stopped' | 'failed'
  readonly doneShare: number
  readonly found?: HoseOrWheels
  readonly failure?: string
  readonly compare: (ask: WheelsAsk) => void
  readonly stop: () => void
}

type Held = Pick<WheelsState, 'state' | 'doneShare' | 'found' | 'failure'>

/** Relay or shuttle, worked out in a worker when asked for; the last answer stays until the next. Leaving ends it. */
export function useWheels(): WheelsState {
  const [held, setHeld] = useState<Held>({ state: 'idle', doneShare: 0 })
  const turn = useRef(0)
  const stop = useCallback(() => {
    turn.current += 1
    void shared?.stop().catch(() => undefined)
    setHeld((before) => (before.state === 'working' ? { ...before, state: 'stopped' } : before))
  }, [])
  useEffect(() => () => {
    turn.current += 1
    void shared?.stop().catch(() => undefined)
  }, [])
  const compare = useCallback((ask: WheelsAsk) => {
    const own = (turn.current += 1)
    const tell = (change: Partial<Held>) => { if (own === turn.current) setHeld((before) => ({ ...before, ...change })) }
    setHeld(({ found }) => ({ state: 'working', doneShare: 0, ...(found && { found }) }))
    getAsks().compare(ask, (doneShare) => { tell({ doneShare }) }).then(
      (found) => { if (found) tell({ state: 'done', doneShare: 1, found }) },
      (error: unknown) => { tell({ state: 'failed', failure: String(error) }) },
    )
  }, [])
  return { ...held, compare, stop }
}
