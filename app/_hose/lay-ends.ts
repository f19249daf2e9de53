import type { Point } from '@/lib/geo'
import type { District, Plan } from '@/lib/plan'
import { FIRE_GROUND, findPlace } from '@/lib/supply'
import type { NameOf } from '../_text'

/** A place where a lay may begin or end. */
export type LayEnd = { readonly id: string; readonly name: string; readonly point: Point }

/** Draft sites, and sources that have none. */
export function layBegins({ draftSites, sources }: District): LayEnd[] {
  return [...draftSites, ...sources.filter(({ id }) => !draftSites.some(({ sourceId }) => sourceId === id))].map(({ id, name, point }) => ({ id, name, point }))
}

/** The fire ground, dump sites and fill sites of the plan. */
export function layGoals(district: District, plan: Plan, names: NameOf): LayEnd[] {
  const fire = findPlace({ district, plan }, FIRE_GROUND)
  return [
    ...(fire ? [{ id: FIRE_GROUND, name: names(FIRE_GROUND) ?? FIRE_GROUND, point: fire }] : []),
    ...[...plan.dumpSites, ...plan.fillSites].map(({ id, name, point }) => ({ id: id as string, name, point })),
  ]
}
