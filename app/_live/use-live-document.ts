'use client'

import { useEffect, useState } from 'react'
import { getClient } from '../_client'
import { LiveStream, type LiveState } from './live-stream'
import { hearStation } from './station-time'
import { nudgeOften } from './nudge-often'

export type LiveDocument = { state: LiveState; present: readonly string[] }

/** Keeps a document up to date the moment that the station has something new of it. `present`: grants at seats of an exercise now. */
export function useLiveDocument(docId: string): LiveDocument {
  const [state, setState] = useState<LiveState>({ kind: 'catching-up' })
  const [present, setPresent] = useState<readonly string[]>([])
  useEffect(() => {
    const stream = new LiveStream({
      url: `/api/documents/${encodeURIComponent(docId)}/live`,
      lastId: () => undefined,
      onState: setState,
      onEvent: ({ event, data }) => {
        const said = JSON.parse(data) as unknown
        if (event === 'beat') hearStation((said as { now_ms: number }).now_ms)
        if (event === 'seats') setPresent(said as string[])
        if (event === 'changed') void getClient().pull(docId)
      },
    })
    stream.start()
    const rest = nudgeOften(stream)
    return () => { rest(); stream.stop() }
  }, [docId])
  return { state, present }
}
