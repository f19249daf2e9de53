import { SECONDS_PER_MINUTE } from '../units'
import { isDirect } from './direct-feed'
import type { PoolTable } from './pool-table'
import type { FeedSpec, ShuttleSpec } from './spec'

/** Hose lays that bring water. */
export type FeedTable = {
  readonly count: number
  /** Dump site each one pours into, -1 where it does not. */
  readonly dump: Int32Array
  /** Fill site each one adds to, -1 where it does not. */
  readonly fill: Int32Array
  /** When the flow of one changes, by time. Those straight to the fire ground are stages of the demand; they are here where they share a source, for what they draw. */
  readonly steps: readonly FeedStep[]
}

export type FeedStep = { readonly at_s: number; readonly feed: number; readonly flow_gpm: number }

/**
 * What a hose lay brings from each moment on: its flow from when it stands, and what runs into its source once that is empty.
 *
 *   empty = ready + usable / (flow − inflow)
 *
 * Its source is reckoned as drawn on at the whole flow from the first moment, though a full tank may hold the lay back: it promises less.
 * A source that others draw on too runs dry in the run itself, see `replanPool`.
 */
export function feedSteps({ ready_s, flow_gpm, usable_gal, inflow_gpm = 0 }: FeedSpec, feed: number): FeedStep[] {
  const first = { at_s: ready_s, feed, flow_gpm }
  if (usable_gal === undefined || inflow_gpm >= flow_gpm) return [first]
  return [first, { at_s: ready_s + (usable_gal / (flow_gpm - inflow_gpm)) * SECONDS_PER_MINUTE, feed, flow_gpm: inflow_gpm }]
}

/**
 * The hose lays of a spec as tables.
 *
 * @param pools shared sources, on which a lay runs dry in the run itself
 */
export function feedTableFor({ feeds = [] }: ShuttleSpec, pools: PoolTable): FeedTable {
  return {
    count: feeds.length,
    dump: Int32Array.from(feeds, ({ dumpIndex }) => dumpIndex ?? -1),
    fill: Int32Array.from(feeds, ({ fillIndex }) => fillIndex ?? -1),
    steps: feeds.flatMap((feed, j): FeedStep[] => {
      if (pools.ofFeed[j]! >= 0) return [{ at_s: feed.ready_s, feed: j, flow_gpm: feed.flow_gpm }]
      return isDirect(feed) ? [] : feedSteps(feed, j)
    }).sort((a, b) => a.at_s - b.at_s),
  }
}

/** The flow of a lay at a moment. */
export function feedFlowAt(feed: FeedSpec, at_s: number): number {
  return feedSteps(feed, 0).findLast((step) => step.at_s <= at_s)?.flow_gpm ?? 0
}

/** Most that lays into a dump site ever bring together. [gpm] */
export const fedMost_gpm = ({ feeds = [] }: ShuttleSpec, dumpIndex: number): number => feeds.reduce((sum, feed) => (feed.dumpIndex === dumpIndex ? sum + feed.flow_gpm : sum), 0)
