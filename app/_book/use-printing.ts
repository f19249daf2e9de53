'use client'

import { useCallback, useEffect, useRef, useState } from 'react'
import type { Issue } from '@/lib/issue'
import { printBook, type PrintOrder, type PrintProgress } from './print-book'

export type PrintedFile = { readonly address: string; readonly name: string; readonly pageCount: number; readonly bytes: number; readonly unwritten: string }
export type Printing = { readonly progress?: PrintProgress; readonly file?: PrintedFile; readonly issue?: Issue }

/** One file at a time: how far it is, what came of it, and the way to stop it. The file lasts as long as the page is open. */
export function usePrinting(): Printing & { readonly print: (order: PrintOrder, fileName: string) => void; readonly stop: () => void } {
  const [state, setState] = useState<Printing>({})
  const ending = useRef<AbortController>(undefined)
  const kept = useRef<string>(undefined)
  const letGo = useCallback(() => {
    ending.current?.abort()
    if (kept.current !== undefined) URL.revokeObjectURL(kept.current)
    kept.current = undefined
  }, [])
  useEffect(() => letGo, [letGo])

  const print = useCallback((order: PrintOrder, fileName: string) => {
    letGo()
    const own = new AbortController()
    ending.current = own
    setState({ progress: { stage: 'answering', share: 0, name: 'none' } })
    const tell = (next: Printing) => { if (ending.current === own) setState(next) }
    printBook(order, { signal: own.signal, onProgress: (progress) => { if (!own.signal.aborted) tell({ progress }) } }).then(
      (made) => {
        if ('code' in made) return tell(made.code === 'printing-stopped' ? {} : { issue: made })
        if (ending.current !== own) return
        kept.current = URL.createObjectURL(new Blob([made.bytes], { type: 'application/pdf' }))
        tell({ file: { address: kept.current, name: fileName, pageCount: made.pageCount, bytes: made.bytes.byteLength, unwritten: made.unwritten } })
      },
      (error: unknown) => { tell({ issue: { code: 'printing-failed', severity: 'block', subjectIds: [], values: { reason: String(error) } } }) },
    )
  }, [letGo])
  const stop = useCallback(() => { ending.current?.abort() }, [])
  return { ...state, print, stop }
}
