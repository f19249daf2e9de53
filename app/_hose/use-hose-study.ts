'use client'

import { wrap } from 'comlink'
import { useEffect, useState } from 'react'
import type { District, Plan } from '@/lib/plan'
import { guardOf } from '../_worker/guard-worker'
import { latestWins } from '../_worker/latest-wins'
import type { HoseAsk, HoseService, HoseStudy } from './hose.worker'

type Ask = (ask: HoseAsk) => Promise<HoseStudy | undefined>

let shared: Ask | undefined

function getStudy(): Ask {
  shared ??= startStudy()
  return shared
}

function startStudy(): Ask {
  const worker = new Worker(new URL('./hose.worker.ts', import.meta.url))
  const guard = guardOf(worker)
  const service = wrap<HoseService>(worker)
  return latestWins((ask) => guard(service.study(ask)))
}

export type HoseStudyState = { study?: HoseStudy; failure?: string; isPending: boolean }

/** One lay, worked out away from the page; its last answer stays, marked pending, until the next has come. */
export function useHoseStudy(district: District, plan: Plan, layId: string): HoseStudyState {
  const [found, setFound] = useState<{ district: District; plan: Plan; layId: string; study?: HoseStudy; failure?: string }>()
  useEffect(() => {
    let isGone = false
    const ask = { district, plan, layId }
    getStudy()(ask).then(
      (study) => { if (study && !isGone) setFound({ ...ask, study }) },
      (error: unknown) => { if (!isGone) setFound({ ...ask, failure: String(error) }) },
    )
    return () => { isGone = true }
  }, [district, plan, layId])
  const own = found?.layId === layId ? found : undefined
  return { ...(own?.study && { study: own.study }), ...(own?.failure && { failure: own.failure }), isPending: own?.plan !== plan || own.district !== district }
}
