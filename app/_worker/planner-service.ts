import type { Point } from '@/lib/geo'
import type { Bundle } from '@/lib/plan'
import { PlannerEngine, type DragAnswer, type PlanAnswer } from './planner-engine'
import type { FindBlob } from './road-desks'
import type { SupplyChart, Working } from '@/lib/supply'

/** What the planner's worker offers. */
export type PlannerService = {
  begin(bundle: Bundle): Promise<PlanAnswer | undefined>
  drag(placeId: string, point: Point): Promise<DragAnswer>
  warm(placeId: string): Promise<void>
  explain(figure: string): Promise<Working | undefined>
  chart(demand?: 'planned' | number): Promise<SupplyChart | undefined>
}

/**
 * The engine behind messages: what has been overtaken by a newer plan meanwhile is not
 * worked out, and answered with undefined.
 *
 * @param turn lets messages that have come in be taken up first
 */
export function plannerService(findBlob: FindBlob, turn: () => Promise<void>): PlannerService {
  const engine = new PlannerEngine(findBlob)
  let newest = 0
  let begun: Promise<PlanAnswer | undefined> = Promise.resolve(undefined)
  return {
    async begin(bundle) {
      const own = (newest += 1)
      const before = begun
      begun = (async () => {
        await before.catch(() => undefined)
        await turn()
        return own === newest ? engine.begin(bundle) : undefined
      })()
      return begun
    },
    async drag(placeId, point) {
      await begun
      return engine.drag(placeId, point)
    },
    async warm(placeId) {
      await begun
      const own = newest
      await engine.warm(placeId, async () => {
        await turn()
        return own === newest
      })
    },
    async explain(figure) {
      await begun
      return engine.explain(figure)
    },
    async chart(demand) {
      await begun
      return engine.chart(demand)
    },
  }
}
