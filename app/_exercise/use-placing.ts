'use client'

import { useCallback, useRef, useState } from 'react'
import type { SiteKind } from '@/app/_look/site-shapes'
import type { Point } from '@/lib/geo'

export type Placing = {
  readonly pending: SiteKind | undefined
  /** Asks for a point on the map; undefined once it is given up. */
  readonly ask: (kind: SiteKind) => Promise<Point | undefined>
  readonly put: (point?: Point) => void
}

/** One point at a time, asked for by a form and shown on the map. */
export function usePlacing(): Placing {
  const [pending, setPending] = useState<SiteKind>()
  const answer = useRef<(point?: Point) => void>(undefined)
  const put = useCallback((point?: Point) => {
    setPending(undefined)
    answer.current?.(point)
    answer.current = undefined
  }, [])
  const ask = useCallback((kind: SiteKind) => {
    answer.current?.()
    setPending(kind)
    return new Promise<Point | undefined>((resolve) => { answer.current = resolve })
  }, [])
  return { pending, ask, put }
}
