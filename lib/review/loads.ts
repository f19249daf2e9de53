import { middleOf } from '../middle-of'
import type { NoteAssumption } from './assumption'
import type { Stay, TripTimes } from './marks'

/** What one tender brought to a dump site on one stay. Water runs evenly from `from_s` to `upTo_s`. */
export type Load = {
  readonly tenderId: string
  readonly siteId?: string | undefined
  readonly from_s: number
  readonly upTo_s: number
  /** From its beginning to empty, expected where that was not seen. */
  readonly took_s: number
  /** All it had to give. */
  readonly whole_gal: number
  /** Left the tender by the end of the log. */
  readonly given_gal: number
  /** Of that, in the tank. */
  readonly kept_gal: number
  /** Its end was seen, or lies between what was seen. */
  readonly isDone: boolean
  /** Neither its beginning nor its end was logged. */
  readonly isAssumed: boolean
}

export type ReviewTender = {
  readonly id: string
  /** Carried and given each trip; absent: not known. */
  readonly usable_gal?: number | undefined
  /** Part that lands in the tank, default 1. */
  readonly keptShare?: number
}

/**
 * The loads a tender gave.
 *
 *   load = water read when it was full, else what it is known to carry, − water read when it was done
 *
 * One that was not done by the end of the log counts as far as it had come in the time that the last loads there took, or
 * its own usual time if that is longer: a full tank holds back all alike.
 *
 * @param stays through `fillMissing`
 * @param dumps of all tenders: finished dumps
 */
export function loadsOf(tender: ReviewTender, stays: readonly Stay[], usual: TripTimes, dumps: readonly FinishedDump[], end_s: number, note: NoteAssumption): Load[] {
  return stays.flatMap((stay, k): Load[] => {
    const { dumping, empty } = stay.times_s
    if (stay.place !== 'dump' || dumping === undefined || dumping > end_s) return []
    const whole_gal = loadOf_gal(tender, stay, stays[k - 1])
    if (whole_gal === undefined) {
      note({ kind: 'load-unknown', apparatusId: tender.id, place: 'dump', siteId: stay.siteId, at_s: dumping, eventIds: stay.eventIds })
      return []
    }
    const took_s = empty !== undefined ? empty - dumping : Math.max(usual.dump, lately_s(dumps, stay.siteId))
    const doneShare = empty !== undefined ? 1 : Math.min(1, (end_s - dumping) / took_s)
    const given_gal = whole_gal * doneShare
    return [{
      tenderId: tender.id, siteId: stay.siteId, from_s: dumping, upTo_s: empty ?? Math.min(end_s, dumping + took_s), took_s, whole_gal, given_gal, kept_gal: given_gal * (tender.keptShare ?? 1),
      isDone: empty !== undefined,
      isAssumed: !stay.seen.has('dumping') && !stay.seen.has('empty'),
    }]
  })
}

export type FinishedDump = { readonly siteId?: string | undefined; readonly from_s: number; readonly upTo_s: number }

/** The dumps of which both ends are known, in the order of the stays. */
export const finishedDumps = (stays: readonly Stay[]): FinishedDump[] => stays.flatMap(({ place, siteId, times_s: { dumping, empty } }) =>
  (place === 'dump' && dumping !== undefined && empty !== undefined ? [{ siteId, from_s: dumping, upTo_s: empty }] : []))

const LATELY_COUNT = 3

/** How long the last dumps at a site took, in the middle; 0 before there was any. */
function lately_s(dumps: readonly FinishedDump[], siteId: string | undefined): number {
  const last = dumps.filter((dump) => dump.siteId === siteId).sort((a, b) => b.upTo_s - a.upTo_s).slice(0, LATELY_COUNT)
  return last.length > 0 ? middleOf(last.map(({ from_s, upTo_s }) => upTo_s - from_s)) : 0
}

function loadOf_gal({ usable_gal }: ReviewTender, stay: Stay, filled: Stay | undefined): number | undefined {
  const full_gal = filled?.water_gal.left ?? filled?.water_gal.full ?? usable_gal
  if (full_gal === undefined) return undefined
  return Math.max(0, full_gal - (stay.water_gal.left ?? stay.water_gal.empty ?? 0))
}

/** Gallons in the tanks by a moment. */
export function broughtBy_gal(loads: readonly Load[], at_s: number): number {
  return loads.reduce((sum, { from_s, upTo_s, kept_gal }) => {
    if (at_s <= from_s) return sum
    return sum + (at_s >= upTo_s ? kept_gal : (kept_gal * (at_s - from_s)) / (upTo_s - from_s))
  }, 0)
}
