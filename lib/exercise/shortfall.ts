import { gapsOf } from './gaps'
import type { Step } from './step'

export type Shortfall = {
  /** Time with less than was asked for. */
  readonly short_s: number
  /** Water that was asked for and did not come. */
  readonly missing_gal: number
  /** When the flow last fell behind, and when it had caught up: absent while it is behind, or never was. */
  readonly lastFrom_s?: number
  readonly lastTo_s?: number
}

/**
 * What the fire ground missed between two moments, of two flows that hold from each step on.
 *
 * @param from_s before it nothing counts
 * @param to_s   not before `from_s`
 */
export function shortfallOf(asked: readonly Step[], flow: readonly Step[], from_s: number, to_s: number): Shortfall {
  const gaps = gapsOf(asked, flow, from_s, to_s)
  const last = gaps.at(-1)
  return {
    short_s: gaps.reduce((sum, gap) => sum + (gap.to_s - gap.from_s), 0), missing_gal: gaps.reduce((sum, gap) => sum + gap.missing_gal, 0),
    ...(last && { lastFrom_s: last.from_s }), ...(last && last.to_s < to_s && { lastTo_s: last.to_s }),
  }
}
