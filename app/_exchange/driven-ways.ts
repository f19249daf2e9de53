import type { DrivenWay } from '@/lib/exchange'
import type { Bundle, Leg } from '@/lib/plan'
import { legUses } from '@/lib/supply'

/** The ways a plan drives over roads, each once for each load; those without a path on the ground are left out. */
export function drivenWays(bundle: Bundle): DrivenWay[] {
  const legs = new Map(bundle.legs.flatMap((leg): [string, Leg][] => (leg.by === 'none' ? [] : [[leg.key, leg]])))
  const ways = new Map<string, DrivenWay>()
  for (const { key, fromId, toId, load } of legUses(bundle)) {
    const leg = legs.get(key)
    const name = `${fromId} ${toId} ${load}`
    if (!leg || leg.path.length < 2 || ways.has(name)) continue
    ways.set(name, { fromId, toId, load, distance_mi: leg.distance_mi, travel_s: leg.travel_s, path: leg.path })
  }
  return [...ways.values()]
}
