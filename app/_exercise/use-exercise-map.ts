'use client'

import { useMemo } from 'react'
import { pointAlong } from '@/lib/geo'
import type { Bundle } from '@/lib/plan'
import type { ExerciseView, Session } from '@/lib/exercise'
import { FIRE_GROUND, findPlace, legUses } from '@/lib/supply'
import type { MapRoute, MapSite } from '../_map'
import { routesFrom } from '../_plan/use-plan-map'
import type { NameOf } from '../_text'

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

/** Tenders where they are: at their site, or as far along their way as they have come. */
export function tendersOnMap(session: Session, view: ExerciseView, names: NameOf): MapSite[] {
  const { bundle } = session.now.world
  const uses = legUses(bundle)
  const legs = new Map(bundle.legs.map((leg) => [leg.key, leg]))
  return view.tenders.flatMap(({ id, phase, siteId, alongShare }, index): MapSite[] => {
    if (phase === 'gone') return []
    const site = findPlace(bundle, siteId)
    const letter = String(index + 1)
    const way = alongShare === undefined ? undefined : uses.find((use) => use.apparatusId === id && use.toId === siteId)
    const leg = way && legs.get(way.key)
    const path = leg && leg.by !== 'none' && leg.path.length > 1 ? leg.path : way ? [way.ask.from, way.ask.to] : undefined
    const point = path && alongShare !== undefined ? pointAlong(path, alongShare) : site
    return point ? [{ id, kind: 'tender', point, name: names(id) ?? id, letter }] : []
  })
}
