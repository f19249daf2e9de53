import { handFigure_gpm } from '../hydraulics'
import { roundOf } from '../shuttle'
import type { CompiledPlan } from './compile-plan'

/**
 * The handbook's figure for the plan: each tender's usable water over the sum of its fill,
 * travel and dump time, added over the tenders. It knows no queue, no shared pump and no tank
 * that fills up, so it stands beside the simulated flow and is no bound of it from below.
 */
export function handFigureOf({ tenders, fills }: Pick<CompiledPlan, 'tenders' | 'fills'>): number {
  return handFigure_gpm(tenders.map(({ spec, fillSiteId, tender }) => {
    const rate_gpm = fills.find(({ site }) => site.id === fillSiteId)?.bayRate_gpm[0] ?? 0
    const { fill_s, dump_s } = roundOf(spec, rate_gpm)
    const tank_gal = tender.tank_gal ?? 0
    return {
      tank_gal,
      usableShare: tank_gal > 0 ? spec.usable_gal / tank_gal : 0,
      fill_s: fill_s + spec.fillPosition_s + spec.fillClear_s,
      travel_s: spec.toFill_s + spec.toDump_s,
      dump_s: dump_s + spec.dumpPosition_s + spec.dumpClear_s,
    }
  }))
}
