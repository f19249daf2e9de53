import { expose } from 'comlink'
import { findBlob } from '@/app/_client/blobs'
import { countedLays, layHeights } from '@/app/_worker/ground/lay-heights'
import { TerrainGrids } from '@/app/_worker/ground/terrain-grids'
import { RoadDesks } from '@/app/_worker/road-desks'
import { PlannerEngine } from '@/app/_worker/planner-engine'
import type { Bundle } from '@/lib/plan'
import { evaluatePlan, type SupplyChart, type SupplyResult } from '@/lib/supply'

/** One plan as it stands beside others. */
export type ComparedAnswer = {
  result: SupplyResult
  chart?: SupplyChart
  /** The plan with every way found: what its nights are drawn from. */
  bundle: Bundle
}

export type CompareService = { answer(bundle: Bundle): Promise<ComparedAnswer> }

const engine = new PlannerEngine(findBlob)
const terrain = new TerrainGrids(findBlob)
const roads = new RoadDesks(findBlob)
let last: Promise<unknown> = Promise.resolve()

/** One plan after the other: the engine holds one at a time. */
const service: CompareService = {
  answer(asked) {
    const made = last.then(async (): Promise<ComparedAnswer> => {
      const heights = await layHeights(terrain, async (one) => (await roads.deskFor(one)).desk, asked.district, countedLays(asked.plan))
      const bundle = heights.length > 0 ? { ...asked, layHeights: heights } : asked
      const { legs } = await engine.begin(bundle)
      const chart = engine.chart()
      const whole = { ...bundle, legs: [...legs] }
      return { bundle: whole, result: evaluatePlan(whole), ...(chart && { chart }) }
    })
    last = made.catch(() => undefined)
    return made
  },
}

expose(service)
