'use client'

import { wrap, type Remote } from 'comlink'
import { useEffect, useState } from 'react'
import type { Bundle } from '@/lib/plan'
import { localDay } from '../_text'
import { guardOf } from '../_worker/guard-worker'
import { latestWins } from '../_worker/latest-wins'
import { onFirstCall } from '../_worker/on-first-call'
import type { HandbookService, HandbookStudy } from './handbook.worker'

type Asked = { bundle: Bundle; dependable_gpm: number | undefined }
type Ask = (asked: Asked) => Promise<HandbookStudy | undefined>

function startStudy(): Ask {
  const worker = new Worker(new URL('./handbook.worker.ts', import.meta.url))
  const service: Remote<HandbookService> = wrap<HandbookService>(worker)
  const guard = guardOf(worker)
  return latestWins(({ bundle, dependable_gpm }: Asked) => guard(service.study(bundle, localDay(), dependable_gpm)))
}

const getStudy = onFirstCall(startStudy)

export type HandbookState = { study?: HandbookStudy; failure?: string; isPending: boolean }

/**
 * The forms and checks of a plan, worked out away from the page; the last ones stay, marked pending, until the next have come.
 *
 * @param bundle with every way found; the same object until the plan changes
 * @param dependable_gpm once it is known; the check is then held against it
 */
export function useHandbook(bundle: Bundle | undefined, dependable_gpm: number | undefined): HandbookState {
  const [found, setFound] = useState<{ of: Bundle; study?: HandbookStudy; failure?: string }>()
  useEffect(() => {
    if (!bundle) return
    let isGone = false
    getStudy()({ bundle, dependable_gpm }).then(
      (study) => { if (study && !isGone) setFound({ of: bundle, study }) },
      (error: unknown) => { if (!isGone) setFound({ of: bundle, failure: String(error) }) },
    )
    return () => { isGone = true }
  }, [bundle, dependable_gpm])
  return { ...(found?.study && { study: found.study }), ...(found?.failure && { failure: found.failure }), isPending: found?.of !== bundle || bundle === undefined }
}
