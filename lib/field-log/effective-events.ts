import type { SiteEvent } from '../plan'
import { byTime, mergeEvents } from './merge-events'

/** What a log says once its corrections and undos are taken in. */
export type EffectiveEvents = {
  /** That count, sorted by each device's own clock. */
  events: SiteEvent[]
  /** Undone, with what was undone of it. */
  retracted: SiteEvent[]
  /** The undos that stand, by the event that each took back: undone themselves, the event is back. */
  undosOf: ReadonlyMap<string, readonly SiteEvent[]>
  /** Corrected, each with what stands in its place. */
  replaced: { event: SiteEvent; by: SiteEvent }[]
  /** Corrected more than once from the same state: the one made last counts. */
  rivals: { event: SiteEvent; taken: SiteEvent; left: SiteEvent[] }[]
  /** Undone by one and corrected by another: the correction counts. */
  undoneAndCorrected: { event: SiteEvent; by: SiteEvent }[]
}

/**
 * Reads a set of events: an undo takes back the event it names, be that a correction or another undo; a correction stands
 * in the place of the event it names, unless it is undone. What an undo or a correction names and is not here may come
 * later: until then an undo does nothing and a correction is an event of its own.
 *
 * @param events in any order, with doubles
 */
export function effectiveEvents(events: readonly SiteEvent[]): EffectiveEvents {
  const merged = mergeEvents(events)
  const retractionsOf = grouped(merged, ({ retracts }) => retracts)
  const memo = new Map<string, boolean>()
  const stands = (event: SiteEvent): boolean => {
    const known = memo.get(event.id)
    if (known !== undefined) return known
    // An undo that in the end undoes itself is no honest one: within such a ring nothing is undone.
    memo.set(event.id, true)
    const result = !(retractionsOf.get(event.id) ?? []).some(stands)
    memo.set(event.id, result)
    return result
  }

  const statements = merged.filter(({ retracts }) => retracts === undefined)
  const standing = statements.filter(stands)
  const correctionsOf = grouped(standing, ({ replaces }) => replaces)
  const byId = new Map(statements.map((event) => [event.id, event]))
  const retracted = statements.filter((event) => !stands(event))
  const undosOf = new Map(retracted.map(({ id }) => [id, (retractionsOf.get(id) ?? []).filter(stands)]))
  const found: EffectiveEvents = { events: [], retracted, undosOf, replaced: [], rivals: [], undoneAndCorrected: [] }
  for (const family of grouped(statements, (event) => firstOf(event, byId).id).values()) {
    const [event] = family
    const [taken, ...left] = family.filter((one) => stands(one) && !correctionsOf.has(one.id)).sort(lastMadeFirst)
    // Events that only correct each other in a ring all stay.
    found.events.push(...(taken ? [taken] : family.filter(stands)))
    if (event && taken && left.length > 0) found.rivals.push({ event: firstOf(event, byId), taken, left })
    for (const one of taken ? family : []) {
      const by = correctionsOf.get(one.id)?.toSorted(lastMadeFirst)[0]
      if (by) (stands(one) ? found.replaced : found.undoneAndCorrected).push({ event: one, by })
    }
  }
  found.events.sort(byTime)
  return found
}

const madeAt = ({ made_ms, at_ms }: SiteEvent): number => made_ms ?? at_ms

const lastMadeFirst = (a: SiteEvent, b: SiteEvent): number => madeAt(b) - madeAt(a) || (a.id < b.id ? 1 : -1)

function grouped(events: readonly SiteEvent[], key: (event: SiteEvent) => string | undefined): Map<string, SiteEvent[]> {
  const groups = new Map<string, SiteEvent[]>()
  for (const event of events) {
    const name = key(event)
    if (name !== undefined) groups.set(name, [...(groups.get(name) ?? []), event])
  }
  return groups
}

/** The event that others correct, from any of its corrections; within a ring the one of the smallest id. */
function firstOf(event: SiteEvent, byId: ReadonlyMap<string, SiteEvent>): SiteEvent {
  const seen = [event]
  for (let at = event; ;) {
    const before = at.replaces === undefined ? undefined : byId.get(at.replaces)
    if (!before) return at
    if (seen.includes(before)) return seen.slice(seen.indexOf(before)).reduce((a, b) => (a.id < b.id ? a : b))
    seen.push(before)
    at = before
  }
}
