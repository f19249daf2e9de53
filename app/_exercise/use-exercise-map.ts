'use client'

import { useMemo } from 'react'
import type { Bundle } from '@/lib/plan'
import { tenderPoints, waysNow, type ExerciseView, type Session } from '@/lib/exercise'
import { FIRE_GROUND, findPlace, legUses } from '@/lib/supply'
import type { MapRoute, MapSite } from '../_map'
import { routesFrom } from '../_plan/use-plan-map'
import { say, type NameOf } from '../_text'

/** Sites and ways of the plan as it now stands. */
export function useExercisePlaces(world: Pick<Session['now']['world'], 'bundle' | 'conditions'> | undefined, names: NameOf): { sites: MapSite[]; routes: MapRoute[] } {
  return useMemo(() => {
    if (!world) return { sites: [], routes: [] }
    const { bundle, conditions } = world
    const { plan, district } = bundle
    const fire = findPlace(bundle, FIRE_GROUND)
    return {
      sites: [
        ...plan.fillSites.map(({ id, name, point }) => ({ id: id as string, kind: 'fillSite' as const, name, point })),
        ...plan.dumpSites.map(({ id, name, point }) => ({ id: id as string, kind: 'dumpSite' as const, name, point })),
        ...(fire ? [{ id: FIRE_GROUND, kind: 'fireGround' as const, name: names(FIRE_GROUND) ?? FIRE_GROUND, point: fire }] : []),
        ...conditions.closed.map(({ id, point }) => ({ id, kind: 'roadNote' as const, name: say('exercise.road.here'), point, isMarked: true })),
        ...district.stations.map(({ id, name, point }) => ({ id: id as string, kind: 'station' as const, name, point })),
      ],
      routes: [...routesFrom(bundle.legs, legUses(bundle), plan), ...roundRoutes(bundle, conditions)],
    }
  }, [world, names])
}

/** Ways round that tenders take now between the sites, each line once. */
function roundRoutes(bundle: Bundle, conditions: Session['now']['world']['conditions']): MapRoute[] {
  if (conditions.closed.length === 0) return []
  const way = waysNow(bundle, conditions)
  const routes = new Map(legUses(bundle).flatMap(({ apparatusId, fromId, toId, load }): [string, MapRoute][] => {
    const on = way(apparatusId, fromId, toId)
    return on.kind === 'round' ? [[`${fromId}>${toId}`, { id: `round ${fromId}>${toId}`, path: on.detour.path, load, by: 'routed', isChosen: true }]] : []
  }))
  return [...routes.values()]
}

/** Tenders where they are, each under its number. */
export const tendersOnMap = ({ now: { world } }: Session, view: Pick<ExerciseView, 'tenders'>, names: NameOf): MapSite[] =>
  tenderPoints(world.bundle, view.tenders, world.conditions).map(({ id, point, number, isHeldUp }) => (
    { id, kind: 'tender', point, name: names(id) ?? id, letter: String(number), ...(isHeldUp && { isMarked: true, note: say('exercise.held-up') }) }
  ))
