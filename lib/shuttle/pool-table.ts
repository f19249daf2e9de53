import { isDirect } from './direct-feed'
import type { FillSpec, ShuttleSpec } from './spec'

/** Sources that more than one fill site or hose lay draws on: the water of each is one. */
export type PoolTable = {
  readonly count: number
  readonly ids: readonly string[]
  readonly usable_gal: Float64Array
  readonly inflow_gpm: Float64Array
  /** Source of each fill site and of each lay, -1 where nobody else draws on it. */
  readonly ofFill: Int32Array
  readonly ofFeed: Int32Array
  /** What each lay brings once its source has run dry. */
  readonly lowFeed_gpm: Float64Array
  /** Place of each source among those from which a lay leads straight to the fire ground, -1 where none does. */
  readonly bit: Int32Array
  readonly bitCount: number
}

/** What a fill site's own pump draws at most, with as many bays as may flow at once. [gpm] */
const mostDrawn_gpm = ({ bayRate_gpm, flowingBayCount = bayRate_gpm.length }: FillSpec): number =>
  bayRate_gpm.slice(0, flowingBayCount).reduce((most, rate_gpm, k) => Math.max(most, rate_gpm * (k + 1)), 0)

/**
 * The sources that are shared. Where those who name one source say different things of it the least counts.
 *
 *   a lay on a dry source = inflow · its flow / (flows of all its lays + most that its fill sites draw)
 */
export function poolTableFor({ fills, feeds = [] }: Pick<ShuttleSpec, 'fills' | 'feeds'>): PoolTable {
  const users = [...fills, ...feeds].filter(({ sourceId, usable_gal }) => sourceId !== undefined && usable_gal !== undefined)
  const ids = [...new Set(users.map(({ sourceId }) => sourceId!))].filter((id) => users.filter(({ sourceId }) => sourceId === id).length > 1)
  const poolOf = ({ sourceId, usable_gal }: { readonly sourceId?: string; readonly usable_gal?: number }): number => (usable_gal === undefined ? -1 : ids.indexOf(sourceId ?? ''))
  const least = (id: string, of: (user: (typeof users)[number]) => number) => users.reduce((low, user) => (user.sourceId === id ? Math.min(low, of(user)) : low), Infinity)
  const inflow_gpm = Float64Array.from(ids, (id) => least(id, (user) => user.inflow_gpm ?? 0))
  const asked_gpm = Float64Array.from(ids, (_, p) =>
    fills.reduce((sum, fill) => sum + (poolOf(fill) === p ? mostDrawn_gpm(fill) : 0), 0) + feeds.reduce((sum, feed) => sum + (poolOf(feed) === p ? feed.flow_gpm : 0), 0))
  let bitCount = 0
  const bit = Int32Array.from(ids, (_, p) => (feeds.some((feed) => poolOf(feed) === p && isDirect(feed)) ? bitCount++ : -1))
  return {
    count: ids.length, ids, inflow_gpm,
    usable_gal: Float64Array.from(ids, (id) => least(id, ({ usable_gal }) => usable_gal!)),
    ofFill: Int32Array.from(fills, poolOf),
    ofFeed: Int32Array.from(feeds, poolOf),
    lowFeed_gpm: Float64Array.from(feeds, (feed) => { const p = poolOf(feed); return p < 0 ? feed.flow_gpm : Math.min(feed.flow_gpm, (inflow_gpm[p]! * feed.flow_gpm) / asked_gpm[p]!) }),
    bit, bitCount,
  }
}
