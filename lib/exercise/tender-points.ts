import { pointAlong, type Point } from '../geo'
import type { Bundle } from '../plan'
import { findPlace, legUses } from '../supply'
import type { TenderView } from './view'

/** The line that each tender drives to each site, by `tenderId siteId`. */
function linesOf(bundle: Bundle): ReadonlyMap<string, readonly Point[]> {
  const legs = new Map(bundle.legs.map((leg) => [leg.key, leg]))
  return new Map(legUses(bundle).toReversed().map(({ apparatusId, toId, key, ask }) => {
    const leg = legs.get(key)
    return [`${apparatusId} ${toId}`, leg && leg.by !== 'none' && leg.path.length > 1 ? leg.path : [ask.from, ask.to]]
  }))
}

const known = new WeakMap<Bundle, ReadonlyMap<string, readonly Point[]>>()

/** Tenders where they are: at their site, or as far along their way as they have come. Those released are nowhere. */
export function tenderPoints(bundle: Bundle, tenders: readonly TenderView[]): { readonly id: string; readonly point: Point; readonly number: number }[] {
  const lines = known.get(bundle) ?? linesOf(bundle)
  known.set(bundle, lines)
  return tenders.flatMap(({ id, phase, siteId, alongShare }, index) => {
    const line = alongShare === undefined ? undefined : lines.get(`${id} ${siteId}`)
    const point = line && alongShare !== undefined ? pointAlong(line, alongShare) : findPlace(bundle, siteId)
    return phase === 'gone' || !point ? [] : [{ id, point, number: index + 1 }]
  })
}
