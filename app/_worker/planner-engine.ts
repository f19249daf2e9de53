import type { Point } from '@/lib/geo'
import type { Issue } from '@/lib/issue'
import type { Bundle, Leg, NoLeg } from '@/lib/plan'
import { compilePlan, evaluatePlan, explain, legUses, supplyChart, type FoundLeg, type LegUse, type SupplyChart, type SupplyResult, type Working } from '@/lib/supply'
import { movePlace } from './move-place'
import { RecentMap } from './recent-map'
import type { RoadDesk } from './road-desk'
import { RoadDesks, type FindBlob } from './road-desks'

/** An answer with the ways it stands on. `isQuick`: the limiting link has not been looked for yet. */
export type PlanAnswer = { result: SupplyResult; legs: readonly (Leg | NoLeg)[]; uses: readonly LegUse[]; issues: readonly Issue[]; isQuick: boolean }

/** An answer while a place is on its way: the ways that move with it, and the figures as they would be. */
export type DragAnswer = { placeId: string; point: Point; legs: readonly (Leg | NoLeg)[]; uses: readonly LegUse[]; result: SupplyResult }

const LEGS_KEPT = 3000

/** Works out answers for one plan at a time, and keeps what the next answer can use again. */
export class PlannerEngine {
  readonly #desks: RoadDesks
  readonly #legs = new RecentMap<Leg | NoLeg>(LEGS_KEPT)
  #desk: RoadDesk | undefined
  #bundle: Bundle | undefined

  constructor(findBlob: FindBlob) {
    this.#desks = new RoadDesks(findBlob)
  }

  /** Takes up a plan and finds its ways. */
  async take(bundle: Bundle): Promise<{ legs: (Leg | NoLeg)[]; issues: readonly Issue[] }> {
    const { desk, issues } = await this.#desks.deskFor(bundle.district)
    this.#desk = desk
    const legs = this.#resolve(bundle, (use) => desk?.find(use.ask))
    this.#bundle = { ...bundle, legs }
    return { legs, issues }
  }

  /** Takes up a plan and answers it, without the limiting link. */
  async begin(bundle: Bundle): Promise<PlanAnswer> {
    const { legs, issues } = await this.take(bundle)
    return { result: evaluatePlan({ ...bundle, legs }, { quick: true }), legs, uses: legUses(bundle), issues, isQuick: true }
  }

  /** The answer with a place moved, which is not kept. Only the ways to and from it are found anew. */
  drag(placeId: string, point: Point): DragAnswer {
    const bundle = movePlace(this.#current(), placeId, point)
    const uses = legUses(bundle).filter(({ fromId, toId }) => fromId === placeId || toId === placeId)
    const desk = this.#desk
    const legs = this.#resolve(bundle, (use) => desk?.findFrom(use.ask, use.fromId === placeId ? 'to' : 'from'))
    const keys = new Set(uses.map(({ key }) => key))
    return { placeId, point, uses, legs: legs.filter(({ key }) => keys.has(key)), result: evaluatePlan({ ...bundle, legs }, { quick: true }) }
  }

  /**
   * Finds all ways from and to the places at the other ends of a place's ways, one a turn, so
   * that the first move of a drag is as quick as the rest.
   *
   * @param goOn asked between two of them; false leaves the rest
   */
  async warm(placeId: string, goOn: () => Promise<boolean>): Promise<void> {
    for (const { ask, fromId, toId } of legUses(this.#current())) {
      if (fromId !== placeId && toId !== placeId) continue
      if (!(await goOn())) return
      this.#desk?.findFrom(ask, fromId === placeId ? 'to' : 'from')
    }
  }

  explain = (figure: string): Working | undefined => explain(this.#current(), figure)

  chart = (demand: 'planned' | number = 'planned'): SupplyChart | undefined => supplyChart(compilePlan(this.#current()), demand)

  #current(): Bundle {
    if (!this.#bundle) throw new RangeError('plan is absent, must be begun first')
    return this.#bundle
  }

  /** Every way of the plan: those that came with it, those known from before, the rest found; unknown ones stay out. */
  #resolve(bundle: Bundle, find: (use: LegUse) => FoundLeg | Issue | undefined): (Leg | NoLeg)[] {
    for (const leg of bundle.legs) this.#legs.put(leg.key, leg)
    const legs = new Map<string, Leg | NoLeg>()
    for (const use of legUses(bundle)) {
      if (legs.has(use.key)) continue
      const known = this.#legs.find(use.key)
      const leg = known ?? legFrom(use.key, find(use))
      if (!leg) continue
      if (!known) this.#legs.put(use.key, leg)
      legs.set(use.key, leg)
    }
    return [...legs.values()]
  }
}

/** What was found, as a bundle keeps it. */
export function legFrom(key: string, found: FoundLeg | Issue | undefined): Leg | NoLeg | undefined {
  if (!found) return undefined
  if ('code' in found) return { key, by: 'none', code: found.code, values: found.values }
  return { key, by: 'routed', ...found }
}
