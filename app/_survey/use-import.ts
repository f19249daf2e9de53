'use client'

import { useCallback, useRef, useState } from 'react'
import { isInside, type Bounds } from '@/lib/geo'
import type { Issue } from '@/lib/issue'
import { placesOf, type District } from '@/lib/plan'
import { getClient, storeImport, Unreachable } from '../_client'
import { formatNumber, localDay, say, sayIssue } from '../_text'
import '../_text/areas/survey'
import { useUnitSystem } from '../_ui/unit-system-context'
import { importFile, type ImportSummary } from '../_worker'

export type ImportState =
  | { kind: 'idle' }
  | { kind: 'reading'; fileName: string; share: number }
  | { kind: 'keeping'; fileName: string }
  | { kind: 'failed'; sentence: string }
  | { kind: 'done'; summary: ImportSummary; issues: readonly Issue[]; outsideCount: number }

/** A page cannot hold more in memory at once than this without trouble. */
const MOST_BYTES = 512 * 1024 * 1024
const BYTES_PER_MB = 1024 * 1024

export type RoadImport = { state: ImportState; run: (file: File) => Promise<Bounds | undefined>; cancel: () => void; close: () => void }

/** Brings a file of map data into a district: read in a worker, kept on the server, given to the district in one act. */
export function useImport(district: District | undefined): RoadImport {
  const [state, setState] = useState<ImportState>({ kind: 'idle' })
  const [system] = useUnitSystem()
  const stop = useRef<AbortController>(undefined)

  const run = useCallback(async (file: File): Promise<Bounds | undefined> => {
    if (!district) return undefined
    const fail = (sentence: string): undefined => { setState({ kind: 'failed', sentence }) }
    const failBy = (why: Issue) => fail(sayIssue(why, () => undefined, system))
    if (file.size > MOST_BYTES) return fail(say('survey.import.too-big', { file: file.name, size: formatNumber(file.size / BYTES_PER_MB), most: formatNumber(MOST_BYTES / BYTES_PER_MB) }))
    const control = new AbortController()
    stop.current = control
    setState({ kind: 'reading', fileName: file.name, share: 0 })
    try {
      const made = await importFile(file, { signal: control.signal, onProgress: (share) => { if (!control.signal.aborted) setState({ kind: 'reading', fileName: file.name, share }) } })
      if ('code' in made) return failBy(made)
      setState({ kind: 'keeping', fileName: file.name })
      const body = await storeImport(made, localDay())
      if (control.signal.aborted) return fail(say('issue.osm-aborted'))
      const refused = getClient().edit(district.id, body, { label: say('survey.import.act') })
      if (refused) return failBy(refused)
      const { bounds } = made.summary
      setState({ kind: 'done', summary: made.summary, issues: made.issues, outsideCount: placesOf(district).filter(({ item }) => !isInside(bounds, item.point)).length })
      return bounds
    } catch (error) {
      if (error instanceof Unreachable) return fail(say('issue.server-unreachable'))
      return fail(say('survey.import.failed', { file: file.name, reason: (error as Error).message }))
    }
  }, [district, system])

  const cancel = useCallback(() => { stop.current?.abort() }, [])
  const close = useCallback(() => { setState({ kind: 'idle' }) }, [])
  return { state, run, cancel, close }
}
