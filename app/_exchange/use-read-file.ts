'use client'

import { transfer } from 'comlink'
import { useCallback, useRef, useState } from 'react'
import { exchangeLimits, type FoundFile } from '@/lib/exchange'
import { issue, type Issue } from '@/lib/issue'
import { say, sayIssue } from '../_text'
import '../_text/areas/exchange'
import { useUnitSystem } from '../_ui/unit-system-context'
import { inOneOffWorker } from '../_worker/one-off-worker'
import { withProgress } from '../_worker/with-progress'
import type { ExchangeService } from './exchange.worker'

export type ReadState =
  | { kind: 'idle' }
  | { kind: 'reading'; fileName: string; share: number }
  | { kind: 'failed'; sentence: string }
  | { kind: 'read'; fileName: string; file: FoundFile }

export type FileReading = { state: ReadState; run: (file: File) => Promise<void>; cancel: () => void; close: () => void }

export const startWorker = (): Worker => new Worker(new URL('./exchange.worker.ts', import.meta.url))

/** Reads a file of places in a worker of its own; giving up ends the worker. */
export function useReadFile(): FileReading {
  const [state, setState] = useState<ReadState>({ kind: 'idle' })
  const [system] = useUnitSystem()
  const stop = useRef<AbortController>(undefined)
  const run = useCallback(async (file: File) => {
    const fail = (why: Issue): void => { setState({ kind: 'failed', sentence: say('exchange.failed', { file: file.name, reason: sayIssue(why, () => undefined, system) }) }) }
    if (file.size > exchangeLimits.maxFileBytes) return fail(issue('exchange-too-large', 'block', [], { limit_MB: exchangeLimits.maxFileBytes / 1_000_000 }))
    const control = new AbortController()
    stop.current = control
    setState({ kind: 'reading', fileName: file.name, share: 0 })
    try {
      const bytes = new Uint8Array(await file.arrayBuffer())
      const found = await inOneOffWorker<ExchangeService, FoundFile | Issue>(startWorker, issue('exchange-aborted', 'block'), control.signal, (service) =>
        withProgress((share: number) => { if (!control.signal.aborted) setState({ kind: 'reading', fileName: file.name, share }) }, async (tell) => service.read(transfer(bytes, [bytes.buffer]), tell)))
      if ('code' in found) return fail(found)
      setState({ kind: 'read', fileName: file.name, file: found })
    } catch (error) {
      setState({ kind: 'failed', sentence: say('exchange.broken', { file: file.name, reason: (error as Error).message }) })
    }
  }, [system])
  const cancel = useCallback(() => { stop.current?.abort() }, [])
  const close = useCallback(() => { setState({ kind: 'idle' }) }, [])
  return { state, run, cancel, close }
}
