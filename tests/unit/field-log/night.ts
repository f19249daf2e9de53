import { uniform } from '@/lib/random'
import type { SiteEvent } from '@/lib/plan'
import { DAY_MS, uuid } from './site-events'

/** What is planned of a trip by every tender of a night. */
const PLANNED = { toDump_s: 420, toFill_s: 360 }

export const nightWorld = {
  findTrip: (_id: string, from: string, to: string) => {
    const travel_s = from === 'F' && to === 'D' ? PLANNED.toDump_s : from === 'D' && to === 'F' ? PLANNED.toFill_s : undefined
    return travel_s === undefined ? undefined : { travel_s, doubt_s: 0.3 * travel_s + 30, lopsided_s: 0.1 * travel_s }
  },
}

export type Night = { seed: number; tenderCount: number; roundCount: number; ahead_s: number; jitterShare: number; dropShare: number; slowFactor?: number }

/**
 * Rounds of tenders as two phones see them, one at the fill site F and one at the dump site D, with trips that differ and
 * events that are missed. The clock at D is ahead by `ahead_s`.
 */
export function nightOf({ seed, tenderCount, roundCount, ahead_s, jitterShare, dropShare, slowFactor = 1 }: Night): SiteEvent[] {
  const events: SiteEvent[] = []
  let draws = 0
  const draw = () => uniform(seed, 1, 1, (draws += 1))
  const trip_s = (planned_s: number) => planned_s * slowFactor * (1 + jitterShare * (2 * draw() - 1))
  for (let tender = 0; tender < tenderCount; tender++) {
    let at_s = 200 * tender
    const see = (site: 'F' | 'D', kind: SiteEvent['kind']) => {
      if (draw() < dropShare) return
      events.push({
        id: uuid(events.length + 1), logId: 'log', device: `phone-${site}`, post: { kind: site === 'F' ? 'fill' : 'dump', siteId: site }, kind,
        apparatusId: `T${tender}`, at_ms: DAY_MS + Math.round((at_s + (site === 'D' ? ahead_s : 0)) * 1000), entered: 'button',
      })
    }
    for (let round = 0; round < roundCount; round++) {
      see('D', 'arrived')
      at_s += 150 + 60 * draw()
      see('D', 'left')
      at_s += trip_s(PLANNED.toFill_s)
      see('F', 'arrived')
      at_s += 200 + 80 * draw()
      see('F', 'left')
      at_s += trip_s(PLANNED.toDump_s)
    }
  }
  return events
}
