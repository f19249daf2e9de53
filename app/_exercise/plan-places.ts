import type { Point } from '@/lib/geo'
import type { Bundle } from '@/lib/plan'
import { FIRE_GROUND, findPlace } from '@/lib/supply'

type Place<Kind extends string> = { id: string; kind: Kind; name: string; point: Point }

/** Places of a plan that a map of its exercise shows: where it works, and where apparatus come from. */
export function placesOf(bundle: Bundle, fireName: string): { sites: Place<'fillSite' | 'dumpSite' | 'fireGround'>[]; stations: Place<'station'>[] } {
  const { plan, district } = bundle
  const fire = findPlace(bundle, FIRE_GROUND)
  return {
    sites: [
      ...plan.fillSites.map(({ id, name, point }) => ({ id: id as string, kind: 'fillSite' as const, name, point })),
      ...plan.dumpSites.map(({ id, name, point }) => ({ id: id as string, kind: 'dumpSite' as const, name, point })),
      ...(fire ? [{ id: FIRE_GROUND, kind: 'fireGround' as const, name: fireName, point: fire }] : []),
    ],
    stations: district.stations.map(({ id, name, point }) => ({ id: id as string, kind: 'station' as const, name, point })),
  }
}
