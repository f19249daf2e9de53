'use client'

import { useEffect, useState } from 'react'
import type { Point } from '@/lib/geo'
import { decodeDistrictMap, sourceKinds, type SourceKind } from '@/lib/osm'
import { findBlob } from '../_client'

/** A place where the map data says water may be had. */
export type MapSource = { readonly osmId: number; readonly kind: SourceKind; readonly name: string; readonly details: string; readonly point: Point }

export type MapSources = { readonly status: 'loading' | 'ready' | 'failed'; readonly sources: readonly MapSource[]; readonly dataDate: string }

const loading: MapSources = { status: 'loading', sources: [], dataDate: '' }

/** Possible sources of a stored map, read when they are first wanted. */
export function useMapSources(hash: string | undefined, isWanted: boolean): MapSources {
  const [got, setGot] = useState<MapSources & { hash: string }>()
  useEffect(() => {
    if (hash === undefined || !isWanted) return
    let isGone = false
    void readSources(hash).then((found) => { if (!isGone) setGot({ ...found, hash }) })
    return () => { isGone = true }
  }, [hash, isWanted])
  return got?.hash === hash && got ? got : loading
}

async function readSources(hash: string): Promise<MapSources> {
  const failed: MapSources = { ...loading, status: 'failed' }
  const bytes = await findBlob(hash).catch(() => undefined)
  const map = bytes && decodeDistrictMap(bytes)
  if (!map || 'code' in map) return failed
  const sources = map.features.flatMap(({ layer, kind, name, details, osmId, runs }): MapSource[] => {
    const [point] = runs[0] ?? []
    const known = sourceKinds.find((one) => one === kind)
    return layer === 'source' && point && known ? [{ osmId, kind: known, name, details, point }] : []
  })
  return { status: 'ready', sources, dataDate: map.dataDate }
}
