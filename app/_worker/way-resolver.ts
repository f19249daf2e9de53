import type { ResolveWays } from '@/lib/advise'
import type { Bundle, Leg, NoLeg } from '@/lib/plan'
import { legUses } from '@/lib/supply'
import { legFrom } from './planner-engine'
import type { RecentMap } from './recent-map'
import type { RoadDesks } from './road-desks'

/** Finds the ways of changed plans over a district's roads, under the notes that each has; ways once found are kept. */
export async function wayResolver(desks: RoadDesks, legs: RecentMap<Leg | NoLeg>, bundle: Pick<Bundle, 'district'>): Promise<ResolveWays> {
  const { roads } = bundle.district
  const { desk } = await desks.deskFor(bundle.district)
  return (asked) => {
    for (const leg of asked.legs) legs.put(leg.key, leg)
    const there = desk && roads && desks.deskOn(desk.graph, roads.hash, asked.district.roadNotes)
    const found = new Map<string, Leg | NoLeg>()
    for (const { key, ask } of legUses(asked)) {
      if (found.has(key)) continue
      const leg = legs.find(key) ?? legFrom(key, there?.find(ask))
      if (!leg) continue
      legs.put(key, leg)
      found.set(key, leg)
    }
    return { ...asked, legs: [...found.values()] }
  }
}
