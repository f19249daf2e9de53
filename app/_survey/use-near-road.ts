'use client'

import { wrap, type Remote } from 'comlink'
import { useEffect, useState } from 'react'
import type { Point } from '@/lib/geo'
import type { NearRoad } from './near-road'
import type { NearRoadService } from './near-road.worker'

let shared: Remote<NearRoadService> | undefined

function getService(): Remote<NearRoadService> {
  shared ??= wrap<NearRoadService>(new Worker(new URL('./near-road.worker.ts', import.meta.url)))
  return shared
}

/** The road nearest to a point, from the district's roads; undefined while it is looked for and where there is none. */
export function useNearRoad(roadsHash: string | undefined, { lat, lon }: Point): NearRoad | undefined {
  const key = `${roadsHash} ${lat} ${lon}`
  const [found, setFound] = useState<{ key: string; road: NearRoad | undefined }>()
  useEffect(() => {
    if (roadsHash === undefined) return
    let isGone = false
    void getService().find(roadsHash, { lat, lon }).then((road) => { if (!isGone) setFound({ key, road }) }, () => undefined)
    return () => { isGone = true }
  }, [key, roadsHash, lat, lon])
  return found?.key === key ? found.road : undefined
}
