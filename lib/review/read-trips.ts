import type { ShuttleSpec, TenderSpec } from '../shuttle'
import type { ReviewAssumption } from './assumption'
import { broughtBy_gal, type Load, type ReviewTender } from './loads'
import type { TenderEvent } from './marks'
import { happenedOf, type Happened } from './happened'
import { tenderLogs, type TenderLog } from './tender-logs'
import { plannedTimes, unplannedTimes } from './usual-times'
import { whyDifferent, type Difference, type Window } from './why-different'

/** A log read as trips: everything a review stands on, in numbers. */
export type Trips = {
  readonly logs: readonly TenderLog[]
  /** In the order in which they began. */
  readonly loads: readonly Load[]
  readonly assumptions: readonly ReviewAssumption[]
  readonly end_s: number
}

/**
 * Reads events as trips. Without any tender or event there are no trips, and nothing is assumed.
 *
 * @param events by tender id
 * @param spec   the plan's numbers; absent: logged without a plan
 */
export function readTrips(tenders: readonly ReviewTender[], events: ReadonlyMap<string, readonly TenderEvent[]>, spec: ShuttleSpec | undefined, end_s: number): Trips {
  const assumptions: ReviewAssumption[] = []
  const logs = tenderLogs(tenders, events, spec, end_s, (one) => { assumptions.push(one) })
  const loads = logs.flatMap((log) => log.loads).sort((a, b) => a.from_s - b.from_s)
  return { logs, loads, assumptions, end_s }
}

/** Longer than so many times the longest time between two loads, and nothing was coming any more. Assumed. */
const STOPPED_FACTOR = 1.5

/**
 * Time over which flows are compared: from the first arrival at a dump site, of the plan or the log, to the end of the last load that
 * was done: how much of one has run that was not done is a guess. Where nothing more came for longer than between any two loads before, by
 * half, the supply had stopped and the time up to the end of the log counts.
 *
 * @returns undefined while the log has no time in it
 */
export function findWindow({ logs, loads, end_s }: Trips, spec: ShuttleSpec | undefined): Window | undefined {
  const planned_s = (spec?.tenders ?? []).map(({ arrive_s }) => arrive_s ?? Infinity)
  const logged_s = logs.flatMap(({ stays }) => stays.flatMap(({ place, times_s: { arrived } }) => (place === 'dump' && arrived !== undefined ? [arrived] : [])))
  const from_s = Math.max(0, Math.min(...planned_s, ...logged_s))
  const done_s = loads.flatMap(({ isDone, upTo_s }) => (isDone ? [upTo_s] : [])).sort((a, b) => a - b)
  const last_s = done_s.at(-1) ?? end_s
  const longest_s = Math.max(0, ...done_s.slice(1).map((at_s, k) => at_s - done_s[k]!))
  const until_s = end_s - last_s <= STOPPED_FACTOR * longest_s ? last_s : end_s
  return from_s < until_s ? { from_s, end_s: until_s } : undefined
}

/** Why the trips differ from the plan; absent while the log has no load, or no time, in it. */
export function differenceOf(trips: Trips, spec: ShuttleSpec, onProgress?: (share: number) => void): { difference: Difference; happened: Happened; window: Window } | undefined {
  const window = findWindow(trips, spec)
  if (!window || trips.loads.length === 0) return undefined
  const happened = happenedOf(spec, trips.logs, trips.end_s)
  const extra = extraTenders(spec, trips, happened)
  const unsure_gal = trips.loads.reduce((sum, { isAssumed, kept_gal }) => sum + (isAssumed ? kept_gal : 0), Math.max(...trips.loads.map(({ whole_gal }) => whole_gal)))
  const brought_gal = broughtBy_gal(trips.loads, window.end_s)
  return { difference: whyDifferent(spec, happened, extra, window, brought_gal, unsure_gal, onProgress), happened, window }
}

/** Tenders of the log that the plan does not have, with the times of the plan's own first tender, else the defaults. */
function extraTenders(spec: ShuttleSpec, { logs }: Trips, happened: Happened): TenderSpec[] {
  return happened.tenders.flatMap((was): TenderSpec[] => {
    if (spec.tenders.some(({ id }) => id === was.id)) return []
    const usable_gal = logs.find(({ tender }) => tender.id === was.id)?.tender.usable_gal ?? was.loads_gal[0] ?? 1
    const like = spec.tenders[0]
    const times = like ? plannedTimes(spec, { ...like, usable_gal }) : unplannedTimes(usable_gal)
    return [{
      id: was.id, usable_gal: Math.max(1, usable_gal), arrive_s: was.arrive_s, dumpIndex: was.dumpIndex, fillIndex: was.fillIndex,
      toFill_s: times.toFill, toDump_s: times.toDump, dumpPosition_s: times.dumpPosition, dumpClear_s: times.dumpClear, fillPosition_s: times.fillPosition, fillClear_s: times.fillClear,
      dumpRate_gpm: like?.dumpRate_gpm ?? [(usable_gal * 60) / times.dump], fillLimit_gpm: like?.fillLimit_gpm ?? (usable_gal * 60) / times.fill, topUpShare: like?.topUpShare ?? 0, topUpRateShare: like?.topUpRateShare ?? 1,
    }]
  })
}
