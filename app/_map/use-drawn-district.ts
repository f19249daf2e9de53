import { useEffect, useState } from 'react'
import { findBlob } from '@/app/_client/blobs'
import { issue, type Issue } from '@/lib/issue'
import type { DataSet } from '@/lib/plan'
import type { DrawnDistrict } from './drawn-district'

export type DrawnDistrictState = { district?: DrawnDistrict; isLoading: boolean; issue?: Issue }

/** The drawn map of a district's data set: fetched once, cut into tiles once. */
export function useDrawnDistrict(dataSet: DataSet | undefined): DrawnDistrictState {
  const hash = dataSet?.hash
  const [state, setState] = useState<DrawnDistrictState & { hash?: string }>({ isLoading: hash !== undefined })
  useEffect(() => {
    if (!hash) return
    let isGone = false
    void findMap(hash).then((found) => {
      if (!isGone) setState('code' in found ? { hash, isLoading: false, issue: found } : { hash, isLoading: false, district: found })
    })
    return () => {
      isGone = true
    }
  }, [hash])
  return state.hash === hash ? state : { isLoading: hash !== undefined }
}

async function findMap(hash: string): Promise<DrawnDistrict | Issue> {
  try {
    // Cutting tiles comes with the first map, not with the page.
    const [bytes, { drawnDistrictFromBlob }] = await Promise.all([findBlob(hash), import('./drawn-district')])
    return bytes ? drawnDistrictFromBlob(hash, bytes) : issue('map-missing', 'warn', [], { hash: hash.slice(0, 12) })
  } catch (error) {
    return issue('map-unreachable', 'warn', [], { reason: String(error) })
  }
}
