'use client'

import { useEffect, useState } from 'react'
import type { RoadClosure } from '@/lib/exercise'
import type { Bundle } from '@/lib/plan'
import { getReferee } from '../_worker/referee'
import type { RefereeService } from '../_worker/referee-service'

const none: readonly RoadClosure[] = []
type Closed = Parameters<RefereeService['closures']>[1]
const noneClosed: Closed = []

/**
 * Roads of a plan that could be closed, with the ways round.
 *
 * @param closed already; the same list until it changes
 * @returns none until they are found, or where the roads are not at hand
 */
export function useClosures(bundle: Bundle | undefined, closed: Closed = noneClosed): { closures: readonly RoadClosure[]; isReady: boolean } {
  const [found, setFound] = useState<{ bundle: Bundle; closed: Closed; closures: readonly RoadClosure[] }>()
  useEffect(() => {
    if (!bundle) return
    let isGone = false
    const keep = (closures: readonly RoadClosure[]) => { if (!isGone) setFound({ bundle, closed, closures }) }
    getReferee().closures(bundle, closed).then(keep, () => { keep(none) })
    return () => { isGone = true }
  }, [bundle, closed])
  return found && found.bundle === bundle && found.closed === closed ? { closures: found.closures, isReady: true } : { closures: none, isReady: false }
}
