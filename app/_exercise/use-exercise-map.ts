'use client'

import { useMemo } from 'react'
import type { Bundle } from '@/lib/plan'
import { tenderPoints, waysNow, type ExerciseView, type Session } from '@/lib/exercise'
import { FIRE_GROUND, legUses } from '@/lib/supply'
import type { MapRoute, MapSite } from '../_map'
import { routesFrom } from '../_plan/use-plan-map'
import { say, type NameOf } from '../_text'
import '../_text/areas/exercise'
import { placesOf } from './plan-places'
import { pointsOnMap } from './points-on-map'

/** Sites and ways of the plan as it now stands. */
export function useExercisePlaces(world: Pick<Session['now']['world'], 'bundle' | 'conditions'> | undefined, names: NameOf): { sites: MapSite[]; routes: MapRoute[] } {
  return useMemo(() => {
    if (!world) return { sites: [], routes: [] }
    const { bundle, conditions } = world
    const { sites, stations } = placesOf(bundle, names(FIRE_GROUND) ?? FIRE_GROUND)
    return {
      sites: [
        ...sites,
        ...conditions.closed.map(({ id, point }) => ({ id, kind: 'roadNote' as const, name: say('exercise.road.here'), point, isMarked: true })),
        ...stations,
      ],
      routes: [...routesFrom(bundle.legs, legUses(bundle), bundle.plan), ...roundRoutes(bundle, conditions)],
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

/** Tenders where they are, each under its short name. */
export const tendersOnMap = ({ now: { world } }: Session, view: Pick<ExerciseView, 'tenders'>, names: NameOf): MapSite[] =>
  pointsOnMap(tenderPoints(world.bundle, view.tenders, world.conditions), names)
