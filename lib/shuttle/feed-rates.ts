import type { SimState } from './state'

/**
 * What hose lays could bring into a site now.
 *
 * @param siteOf site of each lay, -1 where it leads elsewhere: `FeedTable.dump` or `FeedTable.fill`
 */
export function feedInto_gpm(siteOf: Int32Array, state: SimState, site: number): number {
  let sum_gpm = 0
  for (let j = 0; j < siteOf.length; j++) if (siteOf[j] === site) sum_gpm += state.feed_gpm[j]!
  return sum_gpm
}

/** Each lay of a site brings this share of what it could. */
export function setFeedShare(siteOf: Int32Array, state: SimState, site: number, share: number): void {
  for (let j = 0; j < siteOf.length; j++) if (siteOf[j] === site) state.feedRate_gpm[j] = state.feed_gpm[j]! * share
}

/** Adds up what the hose lays of a site brought, at their rates till now. */
export function addFed(siteOf: Int32Array, state: SimState, site: number, elapsed_min: number): void {
  for (let j = 0; j < siteOf.length; j++) if (siteOf[j] === site) state.fed_gal[j] = state.fed_gal[j]! + state.feedRate_gpm[j]! * elapsed_min
}
