'use client'

import { useMemo } from 'react'
import type { Bundle } from '@/lib/plan'
import { tenderPoints, type ExerciseView, type Session } from '@/lib/exercise'
import { FIRE_GROUND, findPlace, legUses } from '@/lib/supply'
import type { MapRoute, MapSite } from '../_map'
import { routesFrom } from '../_plan/use-plan-map'
import { say, type NameOf } from '../_text'

/** Sites and ways of the plan as it now stands. */
export function useExercisePlaces(bundle: Bundle | undefined, names: NameOf): { sites: MapSite[]; routes: MapRoute[] } {
  return useMemo(() => {
    if (!bundle) return { sites: [], routes: [] }
    const { plan, district } = bundle
    const fire = findPlace(bundle, FIRE_GROUND)
    return {
      sites: [
        ...plan.fillSites.map(({ id, name, point }) => ({ id: id as string, kind: 'fillSite' as const, name, point })),
        ...plan.dumpSites.map(({ id, name, point }) => ({ id: id as string, kind: 'dumpSite' as const, name, point })),
        ...(fire ? [{ id: FIRE_GROUND, kind: 'fireGround' as const, name: names(FIRE_GROUND) ?? FIRE_GROUND, point: fire }] : []),
        ...district.stations.map(({ id, name, point }) => ({ id: id as string, kind: 'station' as const, name, point })),
      ],
      routes: routesFrom(bundle.legs, legUses(bundle), plan),
    }
  }, [bundle, names])
}

/** Tenders where they are, each under its number. */
export const tendersOnMap = ({ now: { world } }: Session, view: Pick<ExerciseView, 'tenders'>, names: NameOf): MapSite[] =>
  tenderPoints(world.bundle, view.tenders, world.conditions).map(({ id, point, number, isHeldUp }) => (
    { id, kind: 'tender', point, name: names(id) ?? id, letter: String(number), ...(isHeldUp && { isMarked: true, note: say('exercise.held-up') }) }
  ))
