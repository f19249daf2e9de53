'use client'

import { useEffect, useMemo, useRef, useState, useSyncExternalStore } from 'react'
import { LiveStream, type LiveState } from '../_live/live-stream'
import { nudgeOften } from '../_live/nudge-often'
import { hearStation } from '../_live/station-time'
import { ActOutbox, type OutboxState } from './act-outbox'
import { idOfNumber } from './seat-messages'
import { afterEvent, emptySeat, type SeatState } from './seat-state'
import { sendAct } from './send-act'

export type SeatDesk = { state: SeatState; live: LiveState; outbox: ActOutbox | undefined; sending: OutboxState }

const nothing: OutboxState = { waiting: [], refused: [], isKept: true }
const none = () => () => undefined

/** Some browsers keep nothing for a page in a private window, and say so by throwing. */
function findStore(): Storage | undefined {
  try {
    return localStorage
  } catch {
    return undefined
  }
}

/** The seat of this device: what it hears, and what it sends. */
export function useSeat(): SeatDesk {
  const [state, setState] = useState<SeatState>(emptySeat)
  const [live, setLive] = useState<LiveState>({ kind: 'catching-up' })
  const newest = useRef(emptySeat)
  useEffect(() => {
    newest.current = emptySeat
    const stream = new LiveStream({
      url: '/api/seat/live',
      lastId: () => (newest.current.number > 0 ? idOfNumber(newest.current.number) : undefined),
      onState: setLive,
      onEvent: (event) => {
        if (event.event === 'beat') return hearStation((JSON.parse(event.data) as { now_ms: number }).now_ms)
        const after = afterEvent(newest.current, event)
        if (!after) return false
        newest.current = after
        setState(after)
      },
    })
    stream.start()
    const rest = nudgeOften(stream)
    return () => { rest(); stream.stop() }
  }, [])

  const seatId = state.info?.seatId
  const outbox = useMemo(() => (seatId === undefined ? undefined : new ActOutbox(`millrace-seat-${seatId}`, findStore(), sendAct)), [seatId])
  useEffect(() => {
    if (!outbox || live.kind !== 'live') return
    void outbox.flush()
    return () => { outbox.stop() }
  }, [outbox, live.kind])
  const sending = useSyncExternalStore(outbox?.subscribe ?? none, () => outbox?.state() ?? nothing, () => nothing)
  return { state, live, outbox, sending }
}
