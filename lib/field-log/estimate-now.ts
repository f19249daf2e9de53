import type { TimedEvent } from './on-one-clock'
import type { LogWorld } from './log-world'
import { flowAt, type FlowNow } from './flow-now'

/** A figure nobody has read off anything, with how far it may be off either way. */
export type Estimate = { value: number; doubt: number }

/** Water in the portable tanks of a dump site, as far as it can be told. */
export type TankNow = {
  siteId: string
  /** [gal]; absent while nobody has read it and no load was dumped: nothing can be told of it. */
  level?: Estimate
  capacity_gal?: number
  /** Until it is empty at the flow of now, if nobody comes [s]; absent while nothing is drawn, or nothing can be told of the level. */
  lasts?: Estimate
  /** When the level was last read; absent: never, so it counts as empty before the first load. */
  readAt_ms?: number
  loadCount: number
}

export type OnTheRoad = { apparatusId: string; fromSiteId: string; toSiteId?: string; left_ms: number; expected_ms?: number; doubt_s?: number; isOverdue: boolean }

/** What can be told at this moment; all of it an estimate but what says when it was read. */
export type Now = { tanks: TankNow[]; road: OnTheRoad[]; flow: FlowNow; posts: { apparatusId: string; siteId: string; since_ms: number }[] }

/** A level read off a tank by eye may be off by so much of what it holds. Common practice, no source. */
const READING_SHARE = 0.05
/** A load may be off by so much of it. Common practice, no source. */
const LOAD_SHARE = 0.1
/** How long a load runs out where nobody knows. Common practice, no source. */
const DUMP_S = 120
/** Later than twice its doubt, a tender is overdue. */
const OVERDUE_DOUBTS = 2

/**
 * @param events that count, on one clock, of one log, see `readLog`
 * @param now_ms on that clock
 * @param start_ms dispatch, for what the plan asks for; absent: the first event
 */
export function estimateNow(events: readonly TimedEvent[], world: LogWorld, now_ms: number, start_ms?: number): Now {
  const past = events.filter(({ at_ms }) => at_ms <= now_ms)
  const asked_gpm = askedNow(world, (now_ms - (start_ms ?? past[0]?.at_ms ?? now_ms)) / 1000)
  const dumps = world.sites.filter(({ kind, id }) => kind === 'dump' && past.some(({ post }) => post.siteId === id))
  const flow = flowAt(past, world, now_ms)
  return {
    tanks: dumps.map(({ id }) => tankNow(id, past, world, now_ms, { asked_gpm, share: 1 / dumps.length })),
    road: onTheRoad(past, world, now_ms),
    flow,
    posts: lastOfEach(past).filter(({ kind }) => kind !== 'left').flatMap(({ apparatusId, post, at_ms }) => (apparatusId && post.siteId ? [{ apparatusId, siteId: post.siteId, since_ms: at_ms }] : [])),
  }
}

const askedNow = ({ demand }: LogWorld, at_s: number): number | undefined => demand.findLast(({ from_s }) => from_s <= at_s)?.flow_gpm

const lastOfEach = (past: readonly TimedEvent[]): TimedEvent[] => {
  const last = new Map<string, TimedEvent>()
  for (const event of past) if (event.apparatusId !== undefined && event.post.siteId !== undefined && event.kind !== 'note') last.set(event.apparatusId, event)
  return [...last.values()]
}

/**
 * The last level read, what was dumped since, less what was drawn since; never below nothing nor above what the tanks hold. Nothing is
 * drawn from an empty tank, so what ran short before a load is not taken from it; and where nobody has read, drawing begins with the first load.
 */
function tankNow(siteId: string, past: readonly TimedEvent[], world: LogWorld, now_ms: number, use: { asked_gpm: number | undefined; share: number }): TankNow {
  const capacity_gal = world.capacity_gal(siteId)
  const own = past.filter(({ post }) => post.siteId === siteId)
  const read = own.findLast(({ kind }) => kind === 'tankLevel')
  const loads = loadsSince(own, world, read?.at_ms ?? -Infinity, now_ms)
  const told = { siteId, loadCount: loads.length, ...(capacity_gal !== undefined && { capacity_gal }), ...(read && { readAt_ms: read.at_ms }) }
  if (!read && loads.length === 0) return told
  const from_ms = read?.at_ms ?? Math.min(...loads.map(({ begun_ms }) => begun_ms))
  const drawn = drawnSince(past, from_ms, now_ms, use)
  const added_gal = (until_ms: number) => loadsSince(own.filter(({ at_ms }) => at_ms <= until_ms), world, from_ms, until_ms).reduce((sum, { volume_gal }) => sum + volume_gal, 0)
  const raw_gal = (until_ms: number) => (read?.value ?? 0) + added_gal(until_ms) - drawnSince(past, from_ms, until_ms, use).value
  const lowest_gal = Math.min(0, ...loads.filter(({ begun_ms }) => begun_ms > from_ms).map(({ begun_ms }) => raw_gal(begun_ms)))
  const value = Math.min(Math.max(0, raw_gal(now_ms) - lowest_gal), capacity_gal ?? Infinity)
  const reading_gal = read ? READING_SHARE * (capacity_gal ?? read.value ?? 0) : 0
  const doubt = Math.hypot(reading_gal, drawn.doubt, ...loads.map(({ doubt_gal }) => doubt_gal))
  const flow_gpm = drawn.rate_gpm
  return {
    ...told, level: { value, doubt },
    ...(flow_gpm !== undefined && flow_gpm > 0 && { lasts: { value: (value / flow_gpm) * 60, doubt: (doubt / flow_gpm) * 60 } }),
  }
}

/** What ran into a tank since a moment, and when that load began to. */
type Load = { readonly volume_gal: number; readonly doubt_gal: number; readonly begun_ms: number }

/** Loads into a tank since a moment: whole once a tender is empty or has left, part of it while it dumps. */
function loadsSince(own: readonly TimedEvent[], world: LogWorld, from_ms: number, now_ms: number): Load[] {
  const open = new Map<string, { load_gal: number; begun_ms?: number }>()
  const loads: Load[] = []
  for (const { kind, apparatusId, at_ms, value, post } of own) {
    if (apparatusId === undefined || post.kind !== 'dump') continue
    const load_gal = world.load_gal(apparatusId)
    if (load_gal === undefined) continue
    if (kind === 'arrived') open.set(apparatusId, { load_gal })
    if (kind === 'dumping') open.set(apparatusId, { load_gal, begun_ms: at_ms })
    const stay = open.get(apparatusId)
    if (!stay || (kind !== 'empty' && kind !== 'left')) continue
    open.delete(apparatusId)
    const given_gal = Math.max(0, stay.load_gal - (value ?? 0))
    // What ran in before the level was read is in the reading.
    const dump_ms = (world.dump_s(apparatusId) ?? DUMP_S) * 1000
    const begun_ms = stay.begun_ms ?? at_ms - dump_ms
    const laterShare = at_ms <= from_ms ? 0 : Math.min(1, (at_ms - from_ms) / Math.max(1, at_ms - begun_ms))
    if (laterShare > 0) loads.push({ volume_gal: given_gal * laterShare, doubt_gal: LOAD_SHARE * stay.load_gal, begun_ms })
  }
  for (const [apparatusId, { load_gal, begun_ms }] of open) {
    if (begun_ms === undefined) continue
    const dump_ms = (world.dump_s(apparatusId) ?? DUMP_S) * 1000
    const share = Math.min(1, (now_ms - Math.max(begun_ms, from_ms)) / dump_ms)
    if (share > 0) loads.push({ volume_gal: load_gal * share, doubt_gal: load_gal * Math.max(LOAD_SHARE, share * (1 - share)), begun_ms })
  }
  return loads
}

/** A flow nobody has read is that which the plan asks for, give or take so much of it; one that was read, so much. Common practice, no source. */
const ASKED_SHARE = 0.4
const READ_SHARE = 0.1

/** Water drawn by the attack since a moment: each reading holds until the next; before the first, and where none is, what the plan asks for. */
function drawnSince(past: readonly TimedEvent[], from_ms: number, now_ms: number, { asked_gpm, share }: { asked_gpm: number | undefined; share: number }): Estimate & { rate_gpm: number | undefined } {
  const readings = past.filter(({ kind, post }) => kind === 'flow' && post.kind !== 'fill' && post.kind !== 'draft')
  const points = [{ at_ms: -Infinity, gpm: asked_gpm ?? 0, isRead: false }, ...readings.map(({ at_ms, value = 0 }) => ({ at_ms, gpm: value, isRead: true }))]
  let value = 0
  let doubt = 0
  points.forEach(({ at_ms, gpm, isRead }, i) => {
    const minutes = Math.max(0, Math.min(points[i + 1]?.at_ms ?? now_ms, now_ms) - Math.max(at_ms, from_ms)) / 60_000
    value += minutes * gpm * share
    doubt += minutes * gpm * share * (isRead ? READ_SHARE : ASKED_SHARE)
  })
  const rate_gpm = readings.length > 0 ? readings.at(-1)?.value : asked_gpm
  return { value, doubt, rate_gpm: rate_gpm === undefined ? undefined : rate_gpm * share }
}

/** Tenders whose last word is that they left. */
function onTheRoad(past: readonly TimedEvent[], world: LogWorld, now_ms: number): OnTheRoad[] {
  return lastOfEach(past).filter(({ kind }) => kind === 'left').map(({ apparatusId = '', post: { siteId = '', kind }, at_ms }): OnTheRoad => {
    const toSiteId = lastElsewhere(past, apparatusId, siteId) ?? world.sites.find((site) => site.kind !== kind && world.findTrip(apparatusId, siteId, site.id))?.id
    const trip = toSiteId === undefined ? undefined : world.findTrip(apparatusId, siteId, toSiteId)
    const expected_ms = trip && at_ms + trip.travel_s * 1000
    return {
      apparatusId, fromSiteId: siteId, left_ms: at_ms, isOverdue: trip !== undefined && now_ms > at_ms + (trip.travel_s + OVERDUE_DOUBTS * trip.doubt_s) * 1000,
      ...(toSiteId !== undefined && { toSiteId }), ...(expected_ms !== undefined && { expected_ms }), ...(trip && { doubt_s: trip.doubt_s }),
    }
  })
}

const lastElsewhere = (past: readonly TimedEvent[], apparatusId: string, siteId: string): string | undefined =>
  past.findLast((event) => event.apparatusId === apparatusId && event.post.siteId !== undefined && event.post.siteId !== siteId)?.post.siteId
