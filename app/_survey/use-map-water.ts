'use client'

import { useEffect, useState } from 'react'
import { issue } from '@/lib/issue'
import { inOneOffWorker } from '../_worker/one-off-worker'
import type { MapWater } from './map-water'
import type { MapWaterService } from './map-water.worker'

export type MapWaters = { readonly status: 'loading' | 'ready' | 'failed'; readonly water: readonly MapWater[]; readonly dataDate: string }

const loading: MapWaters = { status: 'loading', water: [], dataDate: '' }
/** What was found last, so that coming back to the survey does not look again. */
let kept: (MapWaters & { readonly key: string }) | undefined
const failed: MapWaters = { ...loading, status: 'failed' }

/** Water of a stored map that may be a source, looked for off the page. */
export function useMapWater(mapHash: string | undefined, roadsHash: string | undefined): MapWaters {
  const key = `${mapHash} ${roadsHash}`
  const [got, setGot] = useState(kept)
  useEffect(() => {
    if (mapHash === undefined || kept?.key === key) return
    const control = new AbortController()
    void findWater(mapHash, roadsHash, control.signal).then((found) => {
      if (control.signal.aborted) return
      if (found.status === 'ready') kept = { ...found, key }
      setGot({ ...found, key })
    })
    return () => { control.abort() }
  }, [key, mapHash, roadsHash])
  return got?.key === key ? got : kept?.key === key ? kept : loading
}

async function findWater(mapHash: string, roadsHash: string | undefined, signal: AbortSignal): Promise<MapWaters> {
  try {
    const found = await inOneOffWorker<MapWaterService, Awaited<ReturnType<MapWaterService['find']>>>(
      () => new Worker(new URL('./map-water.worker.ts', import.meta.url)), issue('osm-aborted', 'block'), signal, (service) => service.find(mapHash, roadsHash))
    return found && !('code' in found) ? { status: 'ready', ...found } : failed
  } catch {
    return failed
  }
}
