import type { Bundle } from '@/lib/plan'
import { legUses } from '@/lib/supply'
import { countedLays, layHeights } from './ground/lay-heights'
import { TerrainGrids } from './ground/terrain-grids'
import { PlannerEngine } from './planner-engine'
import { RoadDesks, type FindBlob } from './road-desks'

/** A plan with all that its answer stands on: every way it drives and the ground under every hose lay that counts. */
export type WholeBundle = {
  readonly bundle: Bundle
  /** What could not be read here, so that the bundle is answered without it, and its answer says so. */
  readonly lacks: readonly ('ways' | 'heights')[]
}

/** Makes plans whole from the roads and elevation at hand, one after the other. */
export class BundleMaker {
  readonly engine: PlannerEngine
  readonly #terrain: TerrainGrids
  readonly #roads: RoadDesks

  constructor(findBlob: FindBlob) {
    this.engine = new PlannerEngine(findBlob)
    this.#terrain = new TerrainGrids(findBlob)
    this.#roads = new RoadDesks(findBlob)
  }

  async make(asked: Bundle): Promise<WholeBundle> {
    const { district, plan } = asked
    const lays = countedLays(plan)
    const heights = await layHeights(this.#terrain, async (one) => (await this.#roads.deskFor(one)).desk, district, lays)
    const ground = heights.length > 0 ? { ...asked, layHeights: heights } : asked
    const { legs } = await this.engine.take(ground)
    const known = new Set(legs.map(({ key }) => key))
    return {
      bundle: { ...ground, legs },
      lacks: [
        ...(district.roads && legUses(ground).some(({ key }) => !known.has(key)) ? ['ways' as const] : []),
        ...(district.terrain && lays.length > 0 && !heights.some(({ points }) => points.length > 0) ? ['heights' as const] : []),
      ],
    }
  }
}
