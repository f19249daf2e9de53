'use client'

import { useEffect, useState } from 'react'
import type { RoadClosure } from '@/lib/exercise'
import type { Bundle } from '@/lib/plan'
import { getReferee } from '../_worker/referee'

const none: readonly RoadClosure[] = []

/** Roads of a plan that could be closed, with the ways round. @returns none until they are found, or where the roads are not at hand */
export function useClosures(bundle: Bundle | undefined): { closures: readonly RoadClosure[]; isReady: boolean } {
  const [found, setFound] = useState<{ bundle: Bundle; closures: readonly RoadClosure[] }>()
  useEffect(() => {
    if (!bundle) return
    let isGone = false
    const keep = (closures: readonly RoadClosure[]) => { if (!isGone) setFound({ bundle, closures }) }
    getReferee().closures(bundle).then(keep, () => { keep(none) })
    return () => { isGone = true }
  }, [bundle])
  return found && found.bundle === bundle ? { closures: found.closures, isReady: true } : { closures: none, isReady: false }
}
