import { tenderSteps } from '../field-log'
import type { ShuttleSpec } from '../shuttle'
import type { NoteAssumption } from './assumption'
import { fillMissing } from './fill-missing'
import { findStays } from './find-stays'
import { finishedDumps, loadsOf, type Load, type ReviewTender } from './loads'
import type { PlaceKind, Stay, TenderEvent, TripTimes } from './marks'
import { loggedTimes, plannedTimes, refinedTimes, unplannedTimes } from './usual-times'

/** What a log says of one tender: its stays with a time for every mark, and what it brought. */
export type TenderLog = {
  readonly tender: ReviewTender
  readonly stays: readonly Stay[]
  readonly loads: readonly Load[]
  /** What each stage takes it with nobody in the way, as far as plan and log say. */
  readonly usual: TripTimes
}

const UNKNOWN_TANK_GAL = 1000

/**
 * Reads what was logged of every tender.
 *
 * @param events by tender
 * @param spec   the plan's numbers; absent: logged without a plan
 * @param end_s  end of the log
 */
export function tenderLogs(tenders: readonly ReviewTender[], events: ReadonlyMap<string, readonly TenderEvent[]>, spec: ShuttleSpec | undefined, end_s: number, note: NoteAssumption): TenderLog[] {
  const found = tenders.map((tender) => {
    const planned = spec?.tenders.find(({ id }) => id === tender.id)
    const times = spec && planned ? plannedTimes(spec, planned) : unplannedTimes(tender.usable_gal ?? UNKNOWN_TANK_GAL)
    return { tender, times, stays: findStays(events.get(tender.id) ?? [], times, tender.id, note) }
  })
  const all = loggedTimes(found.flatMap(({ stays }) => stays))
  const quiet = neverLogged(found.flatMap(({ stays }) => stays), note)
  const whole = found.map(({ tender, times, stays }) => {
    const usual = refinedTimes(times, loggedTimes(stays), all)
    fillMissing(stays, usual, tender.id, quiet, note)
    return { tender, stays, usual }
  })
  const dumps = whole.flatMap(({ stays }) => finishedDumps(stays))
  return whole.map((log) => ({ ...log, loads: loadsOf(log.tender, log.stays, log.usual, dumps, end_s, note) }))
}

/** Marks that nobody logged at any place of a kind that somebody logged at: said once, not for every stay. */
function neverLogged(stays: readonly Stay[], note: NoteAssumption): Set<string> {
  const quiet = new Set<string>()
  for (const place of ['dump', 'fill'] as const satisfies readonly PlaceKind[]) {
    const here = stays.filter((stay) => stay.place === place && stay.seen.size > 0)
    if (here.length === 0) continue
    for (const mark of tenderSteps[place]) {
      if (here.some(({ seen }) => seen.has(mark))) continue
      quiet.add(`${place}/${mark}`)
      note({ kind: 'never-logged', place, mark, eventIds: [] })
    }
  }
  return quiet
}
