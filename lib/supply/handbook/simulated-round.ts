import { SECONDS_PER_MINUTE } from '../../units'
import type { HauledCapacity, PhaseName, ShuttleRecord } from '../../shuttle'

/** A tender's round as it was simulated: the mean of each part over whole rounds. */
export type SimulatedRound = {
  readonly roundCount: number
  /** Water given a trip. */
  readonly counted_gal: number
  readonly waitToDump_s: number
  /** Into the dump position and out of it. */
  readonly dumpHandling_s: number
  readonly dump_s: number
  readonly toFill_s: number
  /** Before a bay, or hooked up in it until it is this bay's turn. */
  readonly waitToFill_s: number
  readonly fillHandling_s: number
  readonly fill_s: number
  readonly toDump_s: number
  /** Before a stretch of road where another vehicle is under way. */
  readonly waitAtRoad_s: number
  /** Drivers' breaks and fuel. */
  readonly rest_s: number
  /** Of the time measured, what it was not in the shuttle. */
  readonly away_s: number
  readonly round_s: number
  readonly flow_gpm: number
}

type Part = 'waitToDump_s' | 'dumpHandling_s' | 'dump_s' | 'toFill_s' | 'waitToFill_s' | 'fillHandling_s' | 'fill_s' | 'toDump_s' | 'waitAtRoad_s' | 'rest_s'

const partOf: Readonly<Partial<Record<PhaseName, Part>>> = {
  'waits-to-dump': 'waitToDump_s', 'takes-position': 'dumpHandling_s', 'clears-position': 'dumpHandling_s', dumps: 'dump_s',
  'drives-to-fill': 'toFill_s', 'waits-to-fill': 'waitToFill_s', 'waits-in-bay': 'waitToFill_s', 'takes-bay': 'fillHandling_s', 'clears-bay': 'fillHandling_s', fills: 'fill_s',
  'drives-to-dump': 'toDump_s', 'waits-at-road': 'waitAtRoad_s', rests: 'rest_s',
}

/**
 * Where a tender's time went in the rounds that its haul was measured over.
 *
 * The parts add up to the round, and the load over the round is the tender's haul.
 *
 * @param measured the tender's window, from `hauledCapacity`; absent: it makes no round
 * @param segments the tender's line of the same run
 * @param counted_gal what it gives a trip
 */
export function simulatedRound(
  measured: HauledCapacity['measured'][number], segments: ShuttleRecord['segments'][number], counted_gal: number, flow_gpm: number,
): SimulatedRound | undefined {
  if (!measured || measured.roundCount === 0) return undefined
  const { from_s, to_s, roundCount } = measured
  const sums: Record<Part, number> = { waitToDump_s: 0, dumpHandling_s: 0, dump_s: 0, toFill_s: 0, waitToFill_s: 0, fillHandling_s: 0, fill_s: 0, toDump_s: 0, waitAtRoad_s: 0, rest_s: 0 }
  for (const { phase, from_s: since_s, to_s: until_s } of segments) {
    const part = partOf[phase]
    const lasted_s = Math.min(until_s, to_s) - Math.max(since_s, from_s)
    if (part && lasted_s > 0) sums[part] += lasted_s / roundCount
  }
  const round_s = (to_s - from_s) / roundCount
  const known_s = Object.values(sums).reduce((sum, part_s) => sum + part_s, 0)
  return { ...sums, roundCount, counted_gal, away_s: Math.max(0, round_s - known_s), round_s, flow_gpm }
}

/** Flow of a round in gpm. */
export const roundFlow_gpm = (load_gal: number, round_s: number): number => (round_s > 0 ? (load_gal / round_s) * SECONDS_PER_MINUTE : 0)
