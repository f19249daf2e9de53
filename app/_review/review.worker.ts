import { expose } from 'comlink'
import { NIGHT_COUNT, nightDrawer, nightFlow, prepareDoubt, SEED } from '@/lib/doubt'
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
    if (!model) return []
    const draw = nightDrawer(model, SEED)
    const flows_gpm = Array.from({ length: NIGHT_COUNT }, (_, night) => {
      const { spec, pump_gpm, isBlocked } = draw(night)
      return isBlocked ? 0 : nightFlow(spec, pump_gpm, model.grid_gpm).flow_gpm
    })
    return flows_gpm.sort((a, b) => a - b)
  },
}

expose(service)
