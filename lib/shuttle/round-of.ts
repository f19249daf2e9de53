import { SECONDS_PER_MINUTE } from '../units'
import type { TenderSpec } from './spec'

/** A tender's round with nobody in its way, by its parts. [s] */
export type Round = { readonly fill_s: number; readonly dump_s: number; readonly handling_s: number; readonly travel_s: number; readonly cycle_s: number }

/**
 * Time to dump a load into a tank with room.
 *
 *   t = Σ over the parts of the load  part / rate
 */
export const dumpAlone_s = ({ usable_gal, dumpRate_gpm }: Pick<TenderSpec, 'usable_gal' | 'dumpRate_gpm'>): number =>
  dumpRate_gpm.reduce((sum, rate_gpm) => sum + (usable_gal / dumpRate_gpm.length / rate_gpm) * SECONDS_PER_MINUTE, 0)

/**
 * A round with nobody in the way: fill, drive, dump, drive, and the handling at both ends. The one reckoning of a round
 * from the shuttle's numbers; queues, full tanks and a weaker inlet beside it only make it longer.
 *
 *   fill = usable / rate · (1 − top-up + top-up / its rate),  cycle = fill + dump + handling + travel
 *
 * @param bayRate_gpm of the bay it fills in, 0 or more; 0: filling is left out
 */
export function roundOf(spec: TenderSpec, bayRate_gpm: number): Round {
  const rate_gpm = Math.min(bayRate_gpm, spec.fillLimit_gpm)
  const slow = spec.topUpShare / spec.topUpRateShare
  const fill_s = rate_gpm > 0 ? (spec.usable_gal / rate_gpm) * SECONDS_PER_MINUTE * (1 - spec.topUpShare + slow) : 0
  const dump_s = dumpAlone_s(spec)
  const handling_s = spec.dumpPosition_s + spec.dumpClear_s + spec.fillPosition_s + spec.fillClear_s
  const travel_s = spec.toFill_s + spec.toDump_s
  return { fill_s, dump_s, handling_s, travel_s, cycle_s: fill_s + dump_s + handling_s + travel_s }
}
