import { SECONDS_PER_MINUTE } from '../units'
import { setPoolLevel, syncPool } from './pool'
import type { Scenario } from './scenario'
import type { SimState } from './state'

/** A shared source and all who draw on it, as the spec says them: what changes there changes them all. Empty for -1. */
export function poolKey({ spec, pools }: Scenario, p: number): string {
  if (p < 0) return ''
  const users = [
    ...spec.fills.flatMap(({ id, bayRate_gpm }, f) => (pools.ofFill[f] === p ? [[id, bayRate_gpm]] : [])),
    ...(spec.feeds ?? []).flatMap(({ id, ready_s, flow_gpm }, j) => (pools.ofFeed[j] === p ? [[id, ready_s, flow_gpm]] : [])),
  ]
  return JSON.stringify([pools.ids[p], pools.usable_gal[p], pools.inflow_gpm[p], users])
}

/** The set of shared sources run dry that feed the fire ground, as the new scenario counts them. */
export function variantFor(from: Scenario, old: SimState, to: Scenario): number {
  return to.pools.ids.reduce((bits, id, p) => {
    const bit = to.pools.bit[p]!
    const before = from.pools.ids.indexOf(id)
    return bit >= 0 && before >= 0 && old.poolDry[before] === 1 ? bits | (1 << bit) : bits
  }, 0)
}

/**
 * Shared sources go on by id. One that others begin to draw on holds what those before have left; a fill site that is alone again has what
 * is left there.
 *
 * @param old its fill sites that change are at the clock already
 * @returns those that changed, to be planned anew
 */
export function carryPools(from: Scenario, old: SimState, to: Scenario, next: SimState): number[] {
  const now_s = next.clock_s[0]!
  const changed: number[] = []
  to.pools.ids.forEach((id, p) => {
    const before = from.pools.ids.indexOf(id)
    const isSame = before >= 0 && poolKey(from, before) === poolKey(to, p)
    if (isSame) {
      for (const field of ['pool_gal', 'poolSince_s', 'poolDryFrom_s'] as const) next[field][p] = old[field][before]!
      next.next_s[to.entities.pools + p] = old.next_s[from.entities.pools + before]!
    } else {
      next.pool_gal[p] = Math.max(0, to.pools.usable_gal[p]! - usedOf(from, old, id, now_s))
      next.poolSince_s[p] = now_s
      if (before >= 0) next.poolDryFrom_s[p] = old.poolDryFrom_s[before]!
      changed.push(p)
    }
    next.poolDry[p] = before >= 0 ? old.poolDry[before]! : 0
    setPoolLevel(to, next, p, next.pool_gal[p]!)
    for (let j = 0; j < to.feeds.count; j++) if (to.pools.ofFeed[j] === p && next.poolDry[p] === 1 && next.feed_gpm[j]! > 0) next.feed_gpm[j] = to.pools.lowFeed_gpm[j]!
  })
  to.spec.fills.forEach(({ id, usable_gal }, f) => {
    const before = from.spec.fills.findIndex((fill) => fill.id === id)
    const pool = before < 0 ? -1 : from.pools.ofFill[before]!
    if (to.pools.ofFill[f]! >= 0 || usable_gal === undefined || pool < 0) return
    next.source_gal[f] = Math.max(0, usable_gal - usedOf(from, old, from.pools.ids[pool]!, now_s))
  })
  next.variant[0] = variantFor(from, old, to)
  return changed
}

/** What is gone of a source, less what ran in: of a shared one as it stands, else what each who drew on it alone has taken. */
function usedOf(from: Scenario, old: SimState, id: string, now_s: number): number {
  const { spec, pools } = from
  const p = pools.ids.indexOf(id)
  if (p >= 0) {
    syncPool(from, old, p, now_s)
    return pools.usable_gal[p]! - old.pool_gal[p]!
  }
  const byFills_gal = spec.fills.reduce((sum, { sourceId, usable_gal }, f) => sum + (sourceId === id && usable_gal !== undefined ? usable_gal - old.source_gal[f]! : 0), 0)
  return (spec.feeds ?? []).reduce((sum, { sourceId, usable_gal, inflow_gpm = 0, flow_gpm, ready_s }) => (sourceId === id && usable_gal !== undefined
    ? sum + Math.min(usable_gal, (Math.max(0, flow_gpm - inflow_gpm) * Math.max(0, now_s - ready_s)) / SECONDS_PER_MINUTE) : sum), byFills_gal)
}
