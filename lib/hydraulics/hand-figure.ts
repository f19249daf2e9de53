import { requireNotNegative, requirePositive } from '../issue'
import { SECONDS_PER_MINUTE } from '../units'
import { usableTank_gal } from './usable-tank'

/** One tender's round by hand: everything it spends at each end, and the road. */
export type HandTender = {
  readonly tank_gal: number
  /** Default 0.9. */
  readonly usableShare?: number
  /** At the fill site: manoeuvre, make and break, filling. */
  readonly fill_s: number
  /** Both ways together. */
  readonly travel_s: number
  /** At the dump site: manoeuvre and dumping. */
  readonly dump_s: number
}

/**
 * Flow of a tender shuttle by hand: each tender's usable water over its round, added up.
 *
 *   gpm = Σ tank · 0.9 / (fill + travel + dump)
 *
 * Knows no queue, no shared pump, no set-up and no tank that runs full: an upper bound of the haul.
 *
 * @param tenders each with a round longer than nothing
 * @returns [gpm]; 0 for no tenders
 * @throws RangeError if out of range
 * @source rating bureau page and lesson plan (seen), tests/reference/shuttle-hand-figures.json
 */
export function handFigure_gpm(tenders: readonly HandTender[]): number {
  return tenders.reduce((total, { tank_gal, usableShare, fill_s, travel_s, dump_s }) => {
    requireNotNegative('fill_s', fill_s)
    requireNotNegative('travel_s', travel_s)
    requireNotNegative('dump_s', dump_s)
    const round_s = fill_s + travel_s + dump_s
    requirePositive('fill_s + travel_s + dump_s', round_s)
    return total + usableTank_gal(tank_gal, usableShare) / (round_s / SECONDS_PER_MINUTE)
  }, 0)
}

/** One tender's round as the annex writes it. */
export type AnnexRound = {
  readonly tank_gal: number
  readonly dump_s: number
  readonly toFill_s: number
  readonly toDump_s: number
  readonly fill_s: number
}

/**
 * Flow of one tender by the annex of the rural water supply standard.
 *
 *   Q = V / (A + T1 + T2 + B) − 10 %
 *
 * @param tank_gal   V, above 0
 * @param dump_s     A: manoeuvre and dump
 * @param toFill_s   T1, with its own 0.65 min
 * @param toDump_s   T2, with its own 0.65 min
 * @param fill_s     B: manoeuvre and fill
 * @returns [gpm]
 * @throws RangeError if out of range
 * @source NFPA 1142 annex (memory, high), tests/reference/shuttle-hand-figures.json
 */
export function annexFigure_gpm({ tank_gal, dump_s, toFill_s, toDump_s, fill_s }: AnnexRound): number {
  requirePositive('tank_gal', tank_gal)
  return handFigure_gpm([{ tank_gal, usableShare: 0.9, fill_s, dump_s, travel_s: toFill_s + toDump_s }])
}
