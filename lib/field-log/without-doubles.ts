import type { SiteEvent } from '../plan'
import { byTime } from './merge-events'

/** The same thing noted twice within this time is one thing: a button pressed twice, or two phones at one post. Common practice, no source. */
const DOUBLE_S = 45

/** What can happen to a tender at a post only once before it has left. */
const ONCE = ['arrived', 'hookedUp', 'filling', 'full', 'left', 'dumping', 'empty']

const keyOf = ({ post, kind, apparatusId }: SiteEvent): string => [post.kind, post.siteId ?? '', kind, apparatusId ?? ''].join(' ')

/**
 * Leaves one of each pair that tells the same thing: the first.
 *
 * @param events that count, on one clock
 * @param within_s from the first to the last of a pair, clock doubt included
 */
export function withoutDoubles(events: readonly SiteEvent[], within_s = DOUBLE_S): { events: SiteEvent[]; doubles: { kept: SiteEvent; dropped: SiteEvent }[] } {
  const last = new Map<string, SiteEvent>()
  const kept: SiteEvent[] = []
  const doubles: { kept: SiteEvent; dropped: SiteEvent }[] = []
  for (const event of events.toSorted(byTime)) {
    const before = ONCE.includes(event.kind) && event.apparatusId !== undefined ? last.get(keyOf(event)) : undefined
    if (before && event.at_ms - before.at_ms <= within_s * 1000) {
      doubles.push({ kept: before, dropped: event })
      continue
    }
    last.set(keyOf(event), event)
    kept.push(event)
  }
  return { events: kept, doubles }
}
