'use client'

import { wrap } from 'comlink'
import { useEffect, useState } from 'react'
import type { Point } from '@/lib/geo'
import type { Issue } from '@/lib/issue'
import type { District, Plan } from '@/lib/plan'
import type { RoadCrossing } from '@/lib/roads'
import { guardOf } from '../_worker/guard-worker'
import { latestWins } from '../_worker/latest-wins'
import { onFirstCall } from '../_worker/on-first-call'
import type { HoseAsk, HoseService, HoseStudy } from './hose.worker'

type Asks = { study: (ask: HoseAsk) => Promise<HoseStudy | undefined>; alongRoads: (ask: HoseAsk) => Promise<Point[] | Issue>; crossings: (ask: HoseAsk) => Promise<RoadCrossing[]> }

function startAsks(): Asks {
  const worker = new Worker(new URL('./hose.worker.ts', import.meta.url))
  const guard = guardOf(worker)
  const service = wrap<HoseService>(worker)
  return { study: latestWins((ask) => guard(service.study(ask))), alongRoads: (ask) => guard<Point[] | Issue>(service.alongRoads(ask) as Promise<Point[] | Issue>), crossings: (ask) => guard(service.crossings(ask)) }
}

const getAsks = onFirstCall(startAsks)

/** The way of a lay along roads its source pumper can drive, or why there is none. */
export const findRoadWay = (ask: HoseAsk): Promise<Point[] | Issue> => getAsks().alongRoads(ask)

/** Where a lay crosses the district's roads. */
export const findLayCrossings = (ask: HoseAsk): Promise<RoadCrossing[]> => getAsks().crossings(ask)

export type HoseStudyState = { study?: HoseStudy; failure?: string; isPending: boolean }

/** One lay, worked out away from the page; its last answer stays, marked pending, until the next has come. */
export function useHoseStudy(district: District, plan: Plan, layId: string): HoseStudyState {
  const [found, setFound] = useState<{ district: District; plan: Plan; layId: string; study?: HoseStudy; failure?: string }>()
  useEffect(() => {
    let isGone = false
    const ask = { district, plan, layId }
    getAsks().study(ask).then(
      (study) => { if (study && !isGone) setFound({ ...ask, study }) },
      (error: unknown) => { if (!isGone) setFound({ ...ask, failure: String(error) }) },
    )
    return () => { isGone = true }
  }, [district, plan, layId])
  const own = found?.layId === layId ? found : undefined
  return { ...(own?.study && { study: own.study }), ...(own?.failure && { failure: own.failure }), isPending: own?.plan !== plan || own.district !== district }
}
