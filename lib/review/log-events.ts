import { compilePlan, defaults, type CompiledPlan } from '../supply'
import type { District, FieldLog, SiteEvent } from '../plan'
import type { NoteAssumption } from './assumption'
import type { ReviewTender } from './loads'
import { stepOf, type Mark, type PlaceKind, type TenderEvent } from './marks'

/** A log in seconds after dispatch: who is a tender, what each was seen at, what was read. */
export type LogEvents = {
  /** Moment of second 0, ms. */
  readonly zero_ms: number
  readonly end_s: number
  /** First arrival of anybody that was logged. */
  readonly arrive_s?: number
  readonly compiled?: CompiledPlan
  /** Most that was asked for at the fire ground; absent: nobody says. */
  readonly needed_gpm?: number
  readonly tenders: readonly ReviewTender[]
  readonly byTender: ReadonlyMap<string, readonly TenderEvent[]>
  readonly readings: readonly Reading[]
}

/** A gauge or a level somebody read. */
export type Reading = {
  readonly id: string
  readonly at_s: number
  readonly kind: 'flow' | 'pressure' | 'tankLevel' | 'primeGot' | 'hookedUp'
  readonly post: SiteEvent['post']
  readonly apparatusId?: string | undefined
  readonly value?: number | undefined
}

const MS = 1000
const readingKinds: readonly string[] = ['flow', 'pressure', 'tankLevel', 'primeGot']
const tenderOnly: readonly string[] = ['dumping', 'empty', 'filling', 'full']
const anyTender: readonly string[] = [...tenderOnly, 'arrived', 'left', 'hookedUp']

/**
 * Turns the events of a log into what a review counts with.
 *
 * Second 0 is dispatch; where the log has none, the first arrival that was logged is taken for that of the plan, else for
 * second 0.
 *
 * @param events   that count, on one clock
 * @param district for a log without a plan
 */
export function logEvents(log: FieldLog, events: readonly SiteEvent[], district: District | undefined, note: NoteAssumption): LogEvents {
  const compiled = log.planned && compilePlan(log.planned)
  const tenders = tendersOf(log, compiled, district)
  const counted = events.filter(({ kind }) => kind !== 'note').toSorted((a, b) => a.at_ms - b.at_ms)
  const arrived = counted.find(({ kind }) => kind === 'arrived')
  const zero_ms = log.dispatched_ms ?? zeroFrom(arrived ?? counted[0], compiled, note)
  const secondOf = (at_ms: number): number => (at_ms - zero_ms) / MS
  const isTender = new Set(tenders.map(({ id }) => id))
  const byTender = new Map<string, TenderEvent[]>()
  const readings: Reading[] = []
  for (const { id, at_ms, kind, post, apparatusId, value } of counted) {
    const at_s = Math.max(0, secondOf(at_ms))
    const place: PlaceKind | undefined = post.kind === 'dump' ? 'dump' : post.kind === 'fill' || post.kind === 'draft' ? 'fill' : undefined
    const isReading = readingKinds.includes(kind) || (kind === 'hookedUp' && post.kind === 'draft')
    if (isReading) readings.push({ id, at_s, kind: kind as Reading['kind'], post, apparatusId, value })
    const isOne = apparatusId !== undefined && isTender.has(apparatusId)
    if (readingKinds.includes(kind) || !anyTender.includes(kind) || (!isOne && !tenderOnly.includes(kind))) continue
    if (!isOne || place === undefined || stepOf(place, kind) < 0) {
      if (isReading) continue
      note({ kind: isOne && place ? 'contradicts' : 'not-used', apparatusId, place, siteId: post.siteId, mark: kind as Mark, at_s, eventIds: [id] })
      continue
    }
    byTender.set(apparatusId, [...(byTender.get(apparatusId) ?? []), { id, at_s, place, mark: kind as Mark, siteId: post.siteId, water_gal: value }])
  }
  const needed_gpm = log.needed_gpm ?? compiled?.demand.needed_gpm
  const last_ms = Math.max(counted.at(-1)?.at_ms ?? zero_ms, log.ended_ms ?? 0)
  return {
    zero_ms, end_s: Math.max(0, secondOf(last_ms)), ...(arrived && { arrive_s: Math.max(0, secondOf(arrived.at_ms)) }),
    ...(compiled && { compiled }), ...(needed_gpm !== undefined && { needed_gpm }), tenders, byTender, readings,
  }
}

function zeroFrom(first: SiteEvent | undefined, compiled: CompiledPlan | undefined, note: NoteAssumption): number {
  if (!first) return 0
  const arrivals_s = [compiled?.firstArrive_s ?? Infinity, ...(compiled?.spec?.tenders ?? []).map(({ arrive_s }) => arrive_s ?? Infinity)]
  const own_s = compiled?.spec?.tenders.find(({ id }) => id === first.apparatusId)?.arrive_s
  const planned_s = own_s ?? Math.min(...arrivals_s)
  note({ kind: 'dispatch-taken', at_s: Number.isFinite(planned_s) ? planned_s : 0, eventIds: [first.id] })
  return first.at_ms - (Number.isFinite(planned_s) ? planned_s * MS : 0)
}

/** Every tender that may be in the log, with what it carries: the plan's as planned, the others of the district, and the log's own. */
function tendersOf(log: FieldLog, compiled: CompiledPlan | undefined, district: District | undefined): ReviewTender[] {
  const planned = (compiled?.spec?.tenders ?? []).map(({ id, usable_gal, spillShare = 0 }): ReviewTender => ({ id, usable_gal, keptShare: 1 - spillShare }))
  const known = new Set(planned.map(({ id }) => id))
  const others = (log.planned?.district ?? district)?.apparatus ?? []
  const more = others.flatMap((unit): ReviewTender[] => (unit.kind === 'tender' && !known.has(unit.id)
    ? [{ id: unit.id, ...(unit.tank_gal !== undefined && { usable_gal: unit.tank_gal * (unit.usableShare ?? defaults.usableShare.value) }) }] : []))
  for (const { id } of more) known.add(id)
  const guests = log.units.flatMap((unit): ReviewTender[] => (known.has(unit.id) ? [] : [{ id: unit.id, ...(unit.tank_gal !== undefined && { usable_gal: unit.tank_gal * defaults.usableShare.value }) }]))
  return [...planned, ...more, ...guests]
}
