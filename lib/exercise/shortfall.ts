import { SECONDS_PER_MINUTE } from '../units'
import type { Step } from './session-record'

export type Shortfall = {
  /** Time with less than was asked for. */
  readonly short_s: number
  /** Water that was asked for and did not come. */
  readonly missing_gal: number
  /** When the flow last fell behind, and when it had caught up: absent while it is behind, or never was. */
  readonly lastFrom_s?: number
  readonly lastTo_s?: number
}

/** Flows this close are the same. */
const SAME_GPM = 0.01

/**
 * What the fire ground missed between two moments, of two flows that hold from each step on.
 *
 * @param from_s before it nothing counts
 * @param to_s   not before `from_s`
 */
export function shortfallOf(asked: readonly Step[], flow: readonly Step[], from_s: number, to_s: number): Shortfall {
  const at = (steps: readonly Step[], time_s: number) => steps.findLast((step) => step.from_s <= time_s)?.flow_gpm ?? 0
  const times = [...new Set([from_s, ...[...asked, ...flow].map((step) => step.from_s).filter((time_s) => time_s > from_s && time_s < to_s)])].sort((a, b) => a - b)
  let short_s = 0, missing_gal = 0
  let lastFrom_s: number | undefined, lastTo_s: number | undefined
  times.forEach((time_s, k) => {
    const held_s = (times[k + 1] ?? to_s) - time_s
    const missing_gpm = at(asked, time_s) - at(flow, time_s)
    if (missing_gpm <= SAME_GPM) return
    if (lastTo_s !== time_s) lastFrom_s = time_s
    lastTo_s = time_s + held_s
    short_s += held_s
    missing_gal += (missing_gpm * held_s) / SECONDS_PER_MINUTE
  })
  const isOver = lastTo_s !== undefined && lastTo_s < to_s
  return { short_s, missing_gal, ...(lastFrom_s !== undefined && { lastFrom_s }), ...(isOver && { lastTo_s }) }
}
