'use client'

import { wrap, type Remote } from 'comlink'
import { useEffect, useState } from 'react'
import type { Bundle } from '@/lib/plan'
import { localDay } from '../_survey/local-day'
import { guardOf } from '../_worker/guard-worker'
import { latestWins } from '../_worker/latest-wins'
import type { HandbookService, HandbookStudy } from './handbook.worker'

let shared: ((bundle: Bundle) => Promise<HandbookStudy | undefined>) | undefined

function getStudy(): (bundle: Bundle) => Promise<HandbookStudy | undefined> {
  shared ??= startStudy()
  return shared
}

function startStudy(): (bundle: Bundle) => Promise<HandbookStudy | undefined> {
  const worker = new Worker(new URL('./handbook.worker.ts', import.meta.url))
  const service: Remote<HandbookService> = wrap<HandbookService>(worker)
  const guard = guardOf(worker)
  return latestWins((bundle) => guard(service.study(bundle, localDay())))
}

export type HandbookState = { study?: HandbookStudy; failure?: string; isPending: boolean }

/**
 * The forms and checks of a plan, worked out away from the page; the last ones stay, marked pending, until the next have come.
 *
 * @param bundle with every way found; the same object until the plan changes
 */
export function useHandbook(bundle: Bundle | undefined): HandbookState {
  const [found, setFound] = useState<{ of: Bundle; study?: HandbookStudy; failure?: string }>()
  useEffect(() => {
    if (!bundle) return
    let isGone = false
    getStudy()(bundle).then(
      (study) => { if (study && !isGone) setFound({ of: bundle, study }) },
      (error: unknown) => { if (!isGone) setFound({ of: bundle, failure: String(error) }) },
    )
    return () => { isGone = true }
  }, [bundle])
  return { ...(found?.study && { study: found.study }), ...(found?.failure && { failure: found.failure }), isPending: found?.of !== bundle || bundle === undefined }
}
