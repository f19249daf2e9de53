import { dependableFrom } from './dependable'
import type { DependableFlow } from '../supply'
import type { DoubtModel } from './model'
import { quantile, shareError } from './quantile'
import { rankingOf, type Ranking } from './ranking'
import { DEPENDABLE_SHARE, NIGHT_COUNT, SEED } from './usual-nights'
import { sampleNights, type NightSample } from './sample-nights'

/** In one night of ten lower, in the middle, in nine of ten not higher; one entry a moment of the clock. */
export type Band = { readonly low: readonly number[]; readonly middle: readonly number[]; readonly high: readonly number[] }

/** How sure an answer is. Times from dispatch. */
export type DoubtAnswer = {
  readonly planId: string
  readonly nightCount: number
  readonly seed: number
  readonly dependable: DependableFlow
  readonly expected_gpm: number
  /** Sustainable flow of each night, rising. */
  readonly flows_gpm: readonly number[]
  /** Part of the nights on which some input lies beyond what the plan can do at all. */
  readonly blockedShare: number
  readonly supplyReady: { readonly low_s: number; readonly middle_s: number; readonly high_s: number; readonly neverShare: number }
  /** Absent demand: nothing is asked for, and nothing can fall short. */
  readonly planned?: {
    /** Part of the nights in which the demand is met from supply ready to the end of the clock. */
    readonly metShare: number
    readonly metError: number
    /** At each moment: part of the nights in which the demand is not fully met just then. */
    readonly shortShare: readonly number[]
    /** Up to each moment: part of the nights in which it was not met at some time after supply was ready. */
    readonly failedShare: readonly number[]
  }
  readonly times_s: readonly number[]
  readonly tanks: readonly { readonly siteId: string; readonly capacity_gal: number; readonly level_gal: Band }[]
  readonly delivered_gal: Band
  /** What explains the doubt of the flow, and of when supply is ready; most first. */
  readonly ofFlow?: Ranking
  readonly ofReady?: Ranking
}

/** Parts of the nights that a band's edges cut off. */
const BAND_SHARES = [0.1, 0.5, 0.9] as const

/**
 * What the nights add up to.
 *
 * @param samples together the nights 0 to n − 1, each once, in any order
 */
export function doubtFrom(model: DoubtModel, samples: readonly NightSample[], seed: number, share = DEPENDABLE_SHARE): DoubtAnswer {
  const { times_s } = model
  const ordered = [...samples].sort((a, b) => a.from - b.from)
  const nightCount = ordered.reduce((sum, { count }) => sum + count, 0)
  const join = (of: (sample: NightSample) => Float64Array): Float64Array => {
    const parts = ordered.map(of)
    const whole = new Float64Array(parts.reduce((sum, { length }) => sum + length, 0))
    parts.reduce((at, part) => (whole.set(part, at), at + part.length), 0)
    return whole
  }
  const flow_gpm = join((sample) => sample.flow_gpm)
  const factors = join((sample) => sample.factors)
  const ready_s = join((sample) => sample.supplyReady_s)
  const failed_s = join((sample) => sample.failed_s)
  const flows_gpm = Float64Array.from(flow_gpm).sort()
  const readies_s = Float64Array.from(ready_s).sort()
  const [low, middle, high] = BAND_SHARES
  const metShare = failed_s.filter((time_s) => time_s === Infinity).length / nightCount
  const partOf = (of: (night: number) => boolean) => {
    let count = 0
    for (let night = 0; night < nightCount; night++) if (of(night)) count++
    return count / nightCount
  }
  const looks = ordered.flatMap((sample) => Array.from({ length: sample.count }, (_, n) => ({ sample, at: n * times_s.length })))
  return {
    planId: model.planId, nightCount, seed,
    dependable: dependableFrom(flow_gpm, seed, share),
    expected_gpm: model.expected_gpm,
    flows_gpm: [...flows_gpm],
    blockedShare: ordered.reduce((sum, { blockedCount }) => sum + blockedCount, 0) / nightCount,
    supplyReady: {
      low_s: quantile(readies_s, low), middle_s: quantile(readies_s, middle), high_s: quantile(readies_s, high),
      neverShare: readies_s.filter((time_s) => time_s === Infinity).length / nightCount,
    },
    ...(model.spec.demand.stages.some((stage) => stage.flow_gpm > 0) && {
      planned: {
        metShare,
        metError: shareError(metShare, nightCount),
        shortShare: times_s.map((_, t) => looks.filter(({ sample, at }) => sample.isShort[at + t] === 1).length / nightCount),
        failedShare: times_s.map((time_s) => partOf((night) => failed_s[night]! >= 0 && failed_s[night]! <= time_s)),
      },
    }),
    times_s,
    tanks: model.spec.dumps.map(({ id, capacity_gal }, d) => ({
      siteId: id, capacity_gal,
      level_gal: bandOf(times_s, (t) => looks.map(({ sample, at }) => sample.level_gal[(at + t) * model.spec.dumps.length + d]!)),
    })),
    delivered_gal: bandOf(times_s, (t) => looks.map(({ sample, at }) => sample.delivered_gal[at + t]!)),
    ofFlow: rankingOf(model.inputs, factors, flow_gpm),
    ofReady: rankingOf(model.inputs, factors, ready_s),
  }
}

function bandOf(times_s: readonly number[], valuesAt: (t: number) => number[]): Band {
  const rows = times_s.map((_, t) => Float64Array.from(valuesAt(t)).sort())
  const [low, middle, high] = BAND_SHARES.map((share) => rows.map((row) => quantile(row, share)))
  return { low: low ?? [], middle: middle ?? [], high: high ?? [] }
}

/** The whole answer at once, where nothing else waits for the processor. */
export function doubtOf(model: DoubtModel, { nightCount = NIGHT_COUNT, seed = SEED, share = DEPENDABLE_SHARE }: { nightCount?: number; seed?: number; share?: number } = {}): DoubtAnswer {
  return doubtFrom(model, [sampleNights(model, seed, 0, nightCount)], seed, share)
}
