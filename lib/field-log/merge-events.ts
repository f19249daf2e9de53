import type { SiteEvent } from '../plan'

/** By each device's own clock, then by id: the order that any number of devices arrive at alone. */
export const byTime = (a: SiteEvent, b: SiteEvent): number => a.at_ms - b.at_ms || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0)

/**
 * One set of events from several: each id once, whatever came first or twice.
 *
 * Events are never changed, so two of one id are the same event. Should a damaged copy say otherwise, the one whose text
 * comes first in the alphabet is taken, so that the order of arrival still does not matter.
 *
 * @returns sorted by `byTime`
 */
export function mergeEvents(...sets: readonly (readonly SiteEvent[])[]): SiteEvent[] {
  const byId = new Map<string, SiteEvent>()
  for (const event of sets.flat()) {
    const there = byId.get(event.id)
    if (!there || textOf(event) < textOf(there)) byId.set(event.id, event)
  }
  return [...byId.values()].sort(byTime)
}

const textOf = (event: SiteEvent): string => JSON.stringify(Object.entries(event).sort(([a], [b]) => (a < b ? -1 : 1)))
