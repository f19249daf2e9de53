import type { Point } from '@/lib/geo'
import type { Bundle } from '@/lib/plan'
import { FIRE_GROUND } from '@/lib/supply'

/** The bundle with one of its places elsewhere: a site of the plan, a station, or the fire ground. */
export function movePlace(bundle: Bundle, placeId: string, point: Point): Bundle {
  const moved = <T extends { id: string; point: Point }>(list: readonly T[]): T[] => list.map((item) => (item.id === placeId ? { ...item, point } : item))
  const { plan, district } = bundle
  if (placeId === FIRE_GROUND) return { ...bundle, plan: { ...plan, fireGround: point } }
  if (district.stations.some(({ id }) => id === placeId)) return { ...bundle, district: { ...district, stations: moved(district.stations) } }
  return { ...bundle, plan: { ...plan, fillSites: moved(plan.fillSites), dumpSites: moved(plan.dumpSites) } }
}
