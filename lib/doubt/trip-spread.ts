import type { ShuttleSpec, Spread, SpreadRange, TripStage } from '../shuttle'

/**
 * How far one trip differs from the next on the same night, as half a triangular range: people
 * handle hoses differently each time, traffic differs, a valve is opened faster or slower.
 * Common practice, no source; on top of what is not known of the time itself.
 */
export const tripSpreadShare: Readonly<Record<TripStage, number>> = {
  dumpPosition: 0.3, dumpClear: 0.3, fillPosition: 0.3, fillClear: 0.3,
  toFill: 0.1, toDump: 0.1,
  dump: 0.1, fill: 0.05,
}

const rangeOf = (spreadShare: number): SpreadRange => ({ lowFactor: 1 - spreadShare, modeFactor: 1, highFactor: 1 + spreadShare })

/**
 * The spec with chance drawn anew each trip; a spread it already has stays.
 *
 * @param shares half the range of each stage; a stage at 0 does not vary
 */
export function withTripSpread(spec: ShuttleSpec, shares: Readonly<Partial<Record<TripStage, number>>> = tripSpreadShare): ShuttleSpec {
  const stages = (Object.entries(shares) as [TripStage, number][]).filter(([, share]) => share > 0)
  if (stages.length === 0) return spec
  const spread = Object.fromEntries(stages.map(([stage, share]) => [stage, { trip: rangeOf(share) } satisfies Spread]))
  return { ...spec, tenders: spec.tenders.map((tender) => ({ ...tender, spread: { ...spread, ...tender.spread } })) }
}
