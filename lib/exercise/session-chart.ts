import type { SupplyChart } from '../supply'
import { NEVER_S } from './closures'
import type { Session } from './session'
import type { SessionRecord } from './session-record'
import { viewOf, type ExerciseView } from './view'

/**
 * The exercise so far, as the string chart draws a run.
 *
 * @param record of the same session
 * @param viewed its tenders at the clock, where they are known already
 */
export function sessionChart(session: Session, { tenders, levels, flow, run }: SessionRecord, viewed: ExerciseView['tenders'] = viewOf(session).tenders): SupplyChart {
  const { spec } = session.now.scenario
  const left_s = new Map(viewed.map((tender) => [tender.id, tender.isHeldUp ? NEVER_S : tender.alongShare === undefined ? 0 : (tender.left_s ?? 0)]))
  return {
    end_s: Math.max(1, session.clock_s),
    tenders: tenders.map(({ id, segments }) => {
      const tender = spec.tenders.find((one) => one.id === id)
      // A drive under way ends where it will, so that it is drawn no further than it has come.
      const line = segments.map((segment, k) => (k === segments.length - 1 ? { ...segment, to_s: segment.to_s + (left_s.get(id) ?? 0) } : segment))
      return { id, segments: line, fillSiteId: spec.fills[tender?.fillIndex ?? 0]?.id ?? '', dumpSiteId: spec.dumps[tender?.dumpIndex ?? 0]?.id ?? '', distance_mi: 0 }
    }),
    tanks: levels.flatMap(({ dumpSiteId, points }) => {
      const dump = spec.dumps.find(({ id }) => id === dumpSiteId)
      return dump ? [{ id: dumpSiteId, capacity_gal: dump.capacity_gal, levels: points }] : []
    }),
    flow,
    ...(run.supplyReady_s !== undefined && { supplyReady_s: run.supplyReady_s }),
  }
}
