import { expose } from 'comlink'
import { nightFlows_gpm, prepareDoubt } from '@/lib/doubt'
import type { Bundle, District, FieldLog, SiteEvent } from '@/lib/plan'
import { compilePlan } from '@/lib/supply'
import { reviewEvents, type EventsReview } from '@/lib/review'

export type ReviewService = {
  review(log: FieldLog, events: readonly SiteEvent[], district: District | undefined, onProgress: (share: number) => void): Promise<EventsReview>
  /** Sustainable flow of each night of a plan's doubt, rising: the nights of the plan's own dependable flow, so that both say the same. None where the plan gives no answer. */
  nights(bundle: Bundle): Promise<number[]>
}

const service: ReviewService = {
  review: async (log, events, district, onProgress) => reviewEvents(log, events, district, onProgress),
  nights: async (bundle) => {
    const model = prepareDoubt(compilePlan(bundle))
    return model ? Array.from(nightFlows_gpm(model).sort()) : []
  },
}

expose(service)
