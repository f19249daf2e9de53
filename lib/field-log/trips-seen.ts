import { middleOf } from '../middle-of'
import type { SiteEvent } from '../plan'
import { TRIP_DOUBT_S, TRIP_DOUBT_SHARE, type LogWorld } from './log-world'

/** Where no plan says how they share it, the two ways of a round may differ by so much of one of them. Common practice, no source. */
const LOPSIDED_SHARE = 0.25

/**
 * The expected trips of a world, and for ways that no plan knows, half of what a round spends on the road as two devices saw
 * it: away from the one by its own clock, less the stay at the other by that one's own, so that no clock need agree with another.
 */
export function tripsSeen(events: readonly SiteEvent[], world: Pick<LogWorld, 'findTrip'>): Pick<LogWorld, 'findTrip'> {
  const spans = spansOf(events)
  return {
    findTrip: (apparatusId, from, to) => {
      const planned = world.findTrip(apparatusId, from, to)
      if (planned) return planned
      const away_s = spans.get(`${apparatusId} away ${from}`)
      const stay_s = spans.get(`${apparatusId} stay ${to}`)
      if (away_s === undefined || stay_s === undefined) return undefined
      const travel_s = (away_s - stay_s) / 2
      return travel_s > 0 ? { travel_s, doubt_s: TRIP_DOUBT_SHARE * travel_s + TRIP_DOUBT_S, lopsided_s: LOPSIDED_SHARE * travel_s } : undefined
    },
  }
}

/** Stays at each site, from arrived to left, and absences, from left to arrived, of each tender by one device's clock: the middle of each. [s] */
function spansOf(events: readonly SiteEvent[]): Map<string, number> {
  const spans = new Map<string, number[]>()
  const last = new Map<string, SiteEvent>()
  for (const event of events.toSorted((a, b) => a.at_ms - b.at_ms)) {
    const { apparatusId, post: { siteId }, device, kind } = event
    if (apparatusId === undefined || siteId === undefined || (kind !== 'arrived' && kind !== 'left')) continue
    const key = `${device} ${apparatusId} ${siteId}`
    const before = last.get(key)
    last.set(key, event)
    if (!before || before.kind === kind) continue
    const name = `${apparatusId} ${kind === 'left' ? 'stay' : 'away'} ${siteId}`
    const own_s = spans.get(name) ?? []
    own_s.push((event.at_ms - before.at_ms) / 1000)
    spans.set(name, own_s)
  }
  return new Map([...spans].map(([name, own_s]) => [name, middleOf(own_s)]))
}
