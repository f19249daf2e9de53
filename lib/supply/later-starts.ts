import { roundOf, type LaterStart } from '../shuttle'
import type { CompiledPlan } from './compile-plan'
import { findOwnSupply } from './hose-lay/resolve-lays'

/**
 * From when each hose lay is felt at the fire ground: when it stands; where it is the whole supply of a fill site, when the tenders that fill
 * there have all been round once, one behind the other at the bays.
 *
 *   start = ready + the longest round + (tenders − bays) · the longest stay in a bay
 */
export function laterStarts({ lays, tenders, fills, bundle: { plan } }: Pick<CompiledPlan, 'lays' | 'tenders' | 'fills' | 'bundle'>): LaterStart[] {
  return lays.map(({ lay, ready_s }) => {
    const site = plan.fillSites.find(({ id }) => id === lay.toId)
    const fill = fills.find((one) => one.site.id === lay.toId)
    if (!site || !fill || findOwnSupply(lays, site)?.lay.id !== lay.id) return { id: lay.id, at_s: ready_s }
    const here = tenders.filter(({ fillSiteId }) => fillSiteId === site.id)
    const rounds = here.map(({ spec }) => ({ ...roundOf(spec, fill.bayRate_gpm.at(-1) ?? 0), handling_s: spec.fillPosition_s + spec.fillClear_s }))
    const longest = (of: (one: (typeof rounds)[number]) => number) => Math.max(0, ...rounds.map(of))
    return { id: lay.id, at_s: ready_s + longest(({ cycle_s }) => cycle_s) + Math.max(0, here.length - fill.bayRate_gpm.length) * longest(({ fill_s, handling_s }) => fill_s + handling_s) }
  })
}
