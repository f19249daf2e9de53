import { SECONDS_PER_MINUTE } from '../units'
import type { Step } from './step'

/** A time without a break in which less came than was asked for. */
export type Gap = { readonly from_s: number; readonly to_s: number; readonly missing_gal: number }

/** Flows this close are the same. */
const SAME_GPM = 0.01

/**
 * When the fire ground was short between two moments, of two flows that hold from each step on.
 *
 * @param from_s before it nothing counts
 * @param to_s   not before `from_s`; a gap that is still open ends there
 */
export function gapsOf(asked: readonly Step[], flow: readonly Step[], from_s: number, to_s: number): Gap[] {
  const at = (steps: readonly Step[], time_s: number) => steps.findLast((step) => step.from_s <= time_s)?.flow_gpm ?? 0
  const times = [...new Set([from_s, ...[...asked, ...flow].map((step) => step.from_s).filter((time_s) => time_s > from_s && time_s < to_s)])].sort((a, b) => a - b)
  const gaps: Gap[] = []
  times.forEach((time_s, k) => {
    const until_s = times[k + 1] ?? to_s
    const missing_gpm = at(asked, time_s) - at(flow, time_s)
    if (missing_gpm <= SAME_GPM) return
    const missing_gal = (missing_gpm * (until_s - time_s)) / SECONDS_PER_MINUTE
    const last = gaps.at(-1)
    if (last?.to_s === time_s) gaps[gaps.length - 1] = { from_s: last.from_s, to_s: until_s, missing_gal: last.missing_gal + missing_gal }
    else gaps.push({ from_s: time_s, to_s: until_s, missing_gal })
  })
  return gaps
}
