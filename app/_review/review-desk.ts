'use client'

import { wrap } from 'comlink'
import type { Bundle, District, FieldLog, SiteEvent } from '@/lib/plan'
import type { EventsReview } from '@/lib/review'
import { guardOf } from '../_worker/guard-worker'
import { onFirstCall } from '../_worker/on-first-call'
import { RecentMap } from '../_worker/recent-map'
import { withProgress } from '../_worker/with-progress'
import type { ReviewService } from './review.worker'

/** Reviews off the page, one after the other. */
export type ReviewDesk = {
  review(log: FieldLog, events: readonly SiteEvent[], district: District | undefined, onProgress: (share: number) => void): Promise<EventsReview>
  nights(bundle: Bundle): Promise<readonly number[]>
}

/** Plans whose nights are kept: logs of one plan share them, also once it was read anew. */
const MOST_PLANS = 16

function startDesk(): ReviewDesk {
  const worker = new Worker(new URL('./review.worker.ts', import.meta.url))
  const service = wrap<ReviewService>(worker)
  const guard = guardOf(worker)
  const nights = new RecentMap<Promise<readonly number[]>>(MOST_PLANS)
  return {
    review: (log, events, district, onProgress) => guard(withProgress(onProgress, async (tell) => service.review(log, events, district, tell))),
    nights: (bundle) => nights.getOrMake(JSON.stringify([bundle.district, bundle.plan, bundle.legs]), () => guard(service.nights(bundle))),
  }
}

export const getReviewDesk = onFirstCall(startDesk)
