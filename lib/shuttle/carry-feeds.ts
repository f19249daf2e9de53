import { poolKey } from './carry-pools'
import type { Scenario } from './scenario'
import { FIRE, type SimState } from './state'

/** The hose lays of a site, as the spec says them: what changes there changes the site. */
export const feedsInto = (scenario: Scenario, place: 'dumpIndex' | 'fillIndex', index: number): string =>
  JSON.stringify((scenario.spec.feeds ?? []).flatMap(({ id, ready_s, flow_gpm, usable_gal, inflow_gpm, [place]: at }, j) =>
    (at === index ? [{ id, ready_s, flow_gpm, usable_gal, inflow_gpm, pool: poolKey(scenario, scenario.pools.ofFeed[j]!) }] : [])))

/** Hose lays go on by id: what they brought stays counted, what they bring now is what the new scenario says of this moment. */
export function carryFeeds(from: Scenario, old: SimState, to: Scenario, next: SimState): void {
  const before = from.spec.feeds ?? []
  const after = to.spec.feeds ?? []
  after.forEach(({ id }, j) => {
    const source = before.findIndex((feed) => feed.id === id)
    if (source < 0) return
    next.fed_gal[j] = old.fed_gal[source]!
    next.feedRate_gpm[j] = old.feedRate_gpm[source]!
  })
  before.forEach(({ id }, j) => {
    if (!after.some((feed) => feed.id === id)) next.fire[FIRE.initial_gal] = next.fire[FIRE.initial_gal]! + old.fed_gal[j]!
  })
  const { steps } = to.feeds
  const now_s = next.clock_s[0]!
  let taken = 0
  for (const { at_s, feed, flow_gpm } of steps) {
    if (at_s > now_s) break
    next.feed_gpm[feed] = flow_gpm
    taken++
  }
  next.feedStep[0] = taken
  if (steps.length > 0) next.next_s[to.entities.feeds] = steps[taken]?.at_s ?? Infinity
}
