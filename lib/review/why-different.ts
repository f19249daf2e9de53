import { SECONDS_PER_MINUTE } from '../units'
import type { ShuttleSpec, TenderSpec } from '../shuttle'
import { causes, type Cause } from './causes-list'
import type { Happened } from './happened'
import { hauledBy_gal } from './replay'
import { replaySpec } from './replay-spec'
import { shapleyValues } from './shapley'

/** The difference between what was achieved and what was planned, split into parts that add up to it. */
export type Difference = {
  readonly planned_gpm: number
  readonly achieved_gpm: number
  /** Each part's share of achieved − planned; below 0 it cost water. Sums with `unexplained_gpm` to the difference. */
  readonly parts: readonly { readonly cause: Cause; readonly gpm: number }[]
  /** Achieved, less what the replay with every part as it happened gives. */
  readonly unexplained_gpm: number
  /** The log itself is not surer than this: the largest load, and every load whose dump was taken rather than seen, over the time. */
  readonly bound_gpm: number
}

/** Time over which flows are compared. Seconds after dispatch. */
export type Window = { readonly from_s: number; readonly end_s: number }

/**
 * Why a log differs from its plan: the simulation is run with every set of parts replaced by what happened, 2⁹ runs, and each part
 * gets its Shapley value of the mean flow into the dump sites over the window.
 *
 * @param extra        tenders that came beside the plan
 * @param brought_gal  what came into the tanks in the window
 * @param unsure_gal   largest load, and loads that were taken rather than seen
 * @param onProgress   called with the part done, 0 to 1
 */
export function whyDifferent(
  spec: ShuttleSpec, happened: Happened, extra: readonly TenderSpec[], window: Window, brought_gal: number, unsure_gal: number, onProgress?: (share: number) => void,
): Difference {
  const minutes = Math.max(1, window.end_s - window.from_s) / SECONDS_PER_MINUTE
  const setCount = 1 << causes.length
  let planned_gpm = 0
  let replayed_gpm = 0
  const gpm = shapleyValues(causes.length, (set) => {
    const replaced = new Set(causes.filter((_, k) => (set >> k) & 1))
    const flow_gpm = hauledBy_gal(replaySpec(spec, happened, extra, replaced), [window.end_s])[0]! / minutes
    if (set === 0) planned_gpm = flow_gpm
    if (set === setCount - 1) replayed_gpm = flow_gpm
    if (onProgress && set % 32 === 31) onProgress((set + 1) / setCount)
    return flow_gpm
  })
  const achieved_gpm = brought_gal / minutes
  return {
    planned_gpm, achieved_gpm,
    parts: causes.map((cause, k) => ({ cause, gpm: gpm[k]! })),
    unexplained_gpm: achieved_gpm - replayed_gpm,
    bound_gpm: unsure_gal / minutes,
  }
}
