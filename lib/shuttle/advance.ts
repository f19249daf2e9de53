import { requireThat } from '../issue'
import { replanDump, syncDump } from './dump-site'
import type { OnEvent } from './event'
import { handleFeed } from './feed'
import { replanFill, replanPool, syncFill } from './fill-site'
import { handleDemand, handleEngine, syncFire, takeUpFire } from './fire-ground'
import { syncPool } from './pool'
import { handlePumper } from './pumper'
import type { Scenario } from './scenario'
import { openPlaces, openSite } from './site-places'
import type { SimState } from './state'
import { handleTender } from './tender'

/**
 * Lets a run go on until a moment, all events at that moment included.
 *
 * Events are taken in the order (time, priority, sequence): tenders in the order in which
 * their events were set, then demand, first engine, pumpers, levels of tanks, sources, places that open late, hose lays, shared sources. The next one is found by
 * a scan over one entry a tender and two or three a site, which below 64 entries is
 * quicker than any queue. Water is not touched between the events that change its rates, so
 * stopping in between changes nothing.
 *
 * @param state changed in place; nothing else is
 * @param until_s not before the clock of the state
 * @throws RangeError if `until_s` is not a number or lies before the clock
 */
export function advance(scenario: Scenario, state: SimState, until_s: number, on?: OnEvent): void {
  requireThat(until_s >= state.clock_s[0]!, 'until_s', until_s, 'not before the clock')
  const { next_s, rank, end_s, isFireDue } = state
  const { demand, engine, pumpers, dumps, fills, places, feeds, pools, count } = scenario.entities
  const dumpCount = scenario.dumps.count
  for (;;) {
    let now_s = Infinity
    let who = -1
    for (let i = 0; i < count; i++) {
      const at_s = next_s[i]!
      if (at_s > now_s) continue
      if (at_s === now_s && (who < 0 || rank[i]! > rank[who]!)) continue
      now_s = at_s
      who = i
    }
    const last_s = Math.min(until_s, end_s[0]!)
    if (who < 0 || now_s > last_s) {
      if (Number.isFinite(last_s) && last_s > state.clock_s[0]!) state.clock_s[0] = last_s
      return
    }
    state.clock_s[0] = now_s
    if (who < demand) handleTender(scenario, state, who, now_s, on)
    else if (who === demand) handleDemand(scenario, state, now_s, on)
    else if (who === engine) handleEngine(scenario, state, now_s, on)
    else if (who < dumps) handlePumper(scenario, state, who - pumpers, now_s, on)
    else if (who < fills) {
      const d = who - dumps
      if (state.open[d] === 0) openSite(scenario, state, d, now_s, on)
      next_s[who] = Infinity
      syncDump(scenario, state, d, now_s)
      replanDump(scenario, state, d, now_s, on)
    } else if (who >= pools) {
      next_s[who] = Infinity
      replanPool(scenario, state, who - pools, now_s, on)
    } else if (who === feeds) handleFeed(scenario, state, now_s, on)
    else if (who === places) openPlaces(scenario, state, now_s, on)
    else {
      const f = who - fills
      if (state.open[dumpCount + f] === 0) openSite(scenario, state, dumpCount + f, now_s, on)
      next_s[who] = Infinity
      syncFill(scenario, state, f, now_s)
      replanFill(scenario, state, f, now_s, on)
    }
    if (isFireDue[0] !== 0) takeUpFire(scenario, state, now_s, on)
  }
}

/** Moves all water of a state up to its clock, for reading; changes no event to come. */
export function settle(scenario: Scenario, state: SimState): void {
  const now_s = state.clock_s[0]!
  for (let d = 0; d < scenario.dumps.count; d++) syncDump(scenario, state, d, now_s)
  for (let f = 0; f < scenario.fills.count; f++) syncFill(scenario, state, f, now_s)
  for (let p = 0; p < scenario.pools.count; p++) syncPool(scenario, state, p, now_s)
  syncFire(scenario, state, now_s)
}
