import { issue, type Issue } from '../issue'
import type { SiteEvent } from '../plan'
import { effectiveEvents, type EffectiveEvents } from './effective-events'
import { stepsAt } from './expected-next'
import type { LogWorld } from './log-world'
import { deviceClocks, type DeviceClock } from './device-clocks'
import { onOneClock, type TimedEvent } from './on-one-clock'
import { withoutDoubles } from './without-doubles'

/** A log ready to be used: what counts, on one clock, once; and all that was assumed on the way there. */
export type ReadLog = {
  events: TimedEvent[]
  /** What counts by each device's own clock, doubles included, and what no longer does. */
  effective: EffectiveEvents
  clocks: DeviceClock[]
  issues: Issue[]
}

/** A trip in less than this share of what is planned cannot be. Common practice, no source. */
const TOO_FAST_SHARE = 0.5

/**
 * Takes in corrections and undos, lays the clocks on one, drops doubles, and says what contradicts what. Nothing is dropped
 * but doubles: whoever reviews decides what a contradiction means.
 *
 * @param events all of a log, in any order
 * @returns issues: `log-clock-shifted`, `log-clock-unlinked`, `log-clock-rivals`, `log-doubled`, `log-rivals`,
 *          `log-undone-and-corrected`, `log-unknown-unit`, `log-unknown-site`, `log-out-of-order`, `log-two-places`,
 *          `log-too-fast`, `log-above-capacity`
 */
export function readLog(events: readonly SiteEvent[], world: LogWorld): ReadLog {
  const effective = effectiveEvents(events)
  const clocks = deviceClocks(effective.events, world)
  const { events: read, doubles } = withoutDoubles(onOneClock(effective.events, clocks))
  const subjects = ({ apparatusId, post }: SiteEvent) => [apparatusId, post.siteId].flatMap((id) => id ?? [])
  const issues = [
    ...clocks.flatMap(clockIssues),
    ...(doubles.length > 0 ? [issue('log-doubled', 'note', [], { doubleCount: doubles.length })] : []),
    ...effective.rivals.map(({ taken, left }) => issue('log-rivals', 'warn', subjects(taken), { kind: taken.kind, at_ms: taken.at_ms, leftCount: left.length })),
    ...effective.undoneAndCorrected.map(({ by }) => issue('log-undone-and-corrected', 'warn', subjects(by), { kind: by.kind, at_ms: by.at_ms })),
    ...unknowns(read, world),
    ...[...staysOf(read).values()].flatMap((stays) => stays.flatMap(orderIssues)),
    ...tripIssues(read, world),
    ...read.flatMap((event) => levelIssues(event, world)),
  ]
  return { events: read, effective, clocks, issues }
}

function clockIssues({ device, shift_s, doubt_s, basis, rivals_s, eventCount }: DeviceClock): Issue[] {
  const values = { device, eventCount, ahead_s: Math.abs(shift_s), aheadOrBehind: shift_s < 0 ? 'ahead' : 'behind', doubt_s }
  if (basis === 'unlinked') return [issue('log-clock-unlinked', 'note', [], { device, eventCount })]
  const found = shift_s === 0 ? [] : [issue('log-clock-shifted', 'warn', [], { ...values, basis: basis.replace(/-(\w)/, (_, letter: string) => letter.toUpperCase()) })]
  const [rival_s] = rivals_s
  return rival_s === undefined || basis === 'agrees' ? found : [...found, issue('log-clock-rivals', 'note', [], { device, rival_s: Math.abs(rival_s), aheadOrBehind: rival_s < 0 ? 'ahead' : 'behind' })]
}

function unknowns(events: readonly SiteEvent[], world: LogWorld): Issue[] {
  const missing = (ids: readonly (string | undefined)[], known: readonly { id: string }[]) => new Set(ids.flatMap((id) => (id === undefined || known.some((one) => one.id === id) ? [] : [id])))
  return [
    ...[...missing(events.map(({ apparatusId }) => apparatusId), world.units)].map((id) => issue('log-unknown-unit', 'warn', [], { id })),
    ...[...missing(events.map(({ post }) => post.siteId), world.sites)].map((id) => issue('log-unknown-site', 'warn', [], { id })),
  ]
}

/** Stays of each tender at each post: from an arrival, or the first event after it left, up to the next. */
function staysOf(events: readonly TimedEvent[]): Map<string, TimedEvent[][]> {
  const stays = new Map<string, TimedEvent[][]>()
  for (const event of events) {
    const { post, apparatusId, kind } = event
    if (apparatusId === undefined || !stepsAt(post.kind).includes(kind)) continue
    const key = `${post.kind} ${post.siteId} ${apparatusId}`
    const own = stays.get(key) ?? []
    const last = own.at(-1)
    const isNew = !last || kind === 'arrived' || last.at(-1)?.kind === 'left'
    stays.set(key, isNew ? [...own, [event]] : [...own.slice(0, -1), [...last, event]])
  }
  return stays
}

/** Within a stay, by one device's own clock, a step that comes before the one that it follows. */
function orderIssues(stay: readonly TimedEvent[]): Issue[] {
  return stay.slice(1).flatMap((event, index) => {
    const before = stay[index]
    if (!before || before.device !== event.device) return []
    const order = stepsAt(event.post.kind)
    if (order.indexOf(event.kind) > order.indexOf(before.kind)) return []
    return [issue('log-out-of-order', 'warn', [event.apparatusId ?? '', event.post.siteId ?? ''], { first: before.kind, then: event.kind, at_ms: event.at_ms })]
  })
}

/** A tender at two places at once, or from one to the other in less time than can be. */
function tripIssues(events: readonly TimedEvent[], world: LogWorld): Issue[] {
  const last = new Map<string, TimedEvent>()
  return events.flatMap((event) => {
    const { apparatusId, post, kind } = event
    if (apparatusId === undefined || post.siteId === undefined || kind === 'note') return []
    const before = last.get(apparatusId)
    last.set(apparatusId, event)
    if (!before || before.post.siteId === undefined || before.post.siteId === post.siteId) return []
    const ids = [apparatusId, before.post.siteId, post.siteId]
    const doubt_s = Math.hypot(before.clockDoubt_s ?? 0, event.clockDoubt_s ?? 0)
    const trip = world.findTrip(apparatusId, before.post.siteId, post.siteId)
    const took_s = (event.at_ms - before.at_ms) / 1000
    if (before.kind !== 'left' && kind !== 'arrived') return [issue('log-two-places', 'warn', ids, { first: before.kind, then: kind, at_ms: event.at_ms })]
    if (before.kind === 'left' && kind === 'arrived' && trip && took_s + doubt_s < TOO_FAST_SHARE * trip.travel_s)
      return [issue('log-too-fast', 'warn', ids, { took_s, planned_s: trip.travel_s, at_ms: event.at_ms })]
    return []
  })
}

function levelIssues({ kind, value, post, at_ms }: TimedEvent, world: LogWorld): Issue[] {
  const capacity_gal = post.siteId === undefined ? undefined : world.capacity_gal(post.siteId)
  if (kind !== 'tankLevel' || value === undefined || capacity_gal === undefined || value <= capacity_gal * 1.05) return []
  return [issue('log-above-capacity', 'warn', [post.siteId ?? ''], { level_gal: value, capacity_gal, at_ms })]
}
