'use client'

import { useCallback, useRef, useState } from 'react'
import { findBounds, type Bounds } from '@/lib/geo'
import { issue, type Issue } from '@/lib/issue'
import { placesOf, type District } from '@/lib/plan'
import { grown } from '@/lib/terrain'
import { getClient, storeElevation, Unreachable } from '../_client'
import { localDay, say, sayIssue } from '../_text'
import '../_text/areas/survey'
import { useUnitSystem } from '../_ui/unit-system-context'
import { importElevationFiles, type ElevationSummary } from '../_worker'

export type ElevationState =
  | { kind: 'idle' }
  | { kind: 'reading'; fileNames: readonly string[]; share: number }
  | { kind: 'keeping' }
  | { kind: 'failed'; sentence: string }
  | { kind: 'done'; summary: ElevationSummary; issues: readonly Issue[] }

export type ElevationImportDesk = { state: ElevationState; run: (files: readonly File[]) => void; cancel: () => void; close: () => void }

/** Around the places of a district whose roads say no bounds. */
const AROUND_PLACES_M = 5000

/** What the elevation is cut to. */
function findCut(district: District): Bounds | undefined {
  const places = findBounds(placesOf(district).map(({ item }) => item.point))
  return district.bounds ?? (places && grown(places, AROUND_PLACES_M))
}

/** Brings elevation files into a district: read in a worker, kept on the server, given to the district in one act. */
export function useElevationImport(district: District | undefined): ElevationImportDesk {
  const [state, setState] = useState<ElevationState>({ kind: 'idle' })
  const [system] = useUnitSystem()
  const stop = useRef<AbortController>(undefined)

  const bringIn = useCallback(async (files: readonly File[]): Promise<void> => {
    if (!district || files.length === 0) return
    const fail = (why: Issue) => { setState({ kind: 'failed', sentence: sayIssue(why, () => undefined, system) }) }
    const bounds = findCut(district)
    if (!bounds) { fail(issue('elevation-no-district', 'block')); return }
    const control = new AbortController()
    stop.current = control
    const fileNames = files.map(({ name }) => name)
    setState({ kind: 'reading', fileNames, share: 0 })
    try {
      const made = await importElevationFiles(files, { bounds, signal: control.signal, onProgress: (share) => { if (!control.signal.aborted) setState({ kind: 'reading', fileNames, share }) } })
      if ('code' in made) { fail(made); return }
      setState({ kind: 'keeping' })
      const body = await storeElevation(made, localDay(), district.terrain)
      if (control.signal.aborted) { fail(issue('elevation-aborted', 'block')); return }
      const refused = getClient().edit(district.id, body, { label: say('survey.elevation.act') })
      if (refused) { fail(refused); return }
      setState({ kind: 'done', summary: made.summary, issues: made.issues })
    } catch (error) {
      setState({ kind: 'failed', sentence: error instanceof Unreachable ? say('issue.server-unreachable') : say('survey.elevation.failed', { reason: (error as Error).message }) })
    }
  }, [district, system])

  const run = useCallback((files: readonly File[]) => { void bringIn(files) }, [bringIn])
  const cancel = useCallback(() => { stop.current?.abort() }, [])
  const close = useCallback(() => { setState({ kind: 'idle' }) }, [])
  return { state, run, cancel, close }
}
