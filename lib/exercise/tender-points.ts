import { pointAlong, type Point } from '../geo'
import { findApparatus, type Bundle } from '../plan'
import { findPlace } from '../supply'
import { waysNow, type Roads } from './closures'
import type { TenderView } from './view'

export type TenderPoint = { readonly id: string; readonly point: Point; readonly number: number; readonly isHeldUp?: boolean }

/**
 * Tenders where they are: at their site, or as far along the way they drive now as they have come. Those released are nowhere.
 *
 * @param roads what is closed; absent: nothing
 */
export function tenderPoints(bundle: Bundle, tenders: readonly TenderView[], roads: Roads = { closed: [], detours: [] }): TenderPoint[] {
  const way = waysNow(bundle, roads)
  return tenders.flatMap(({ id, phase, siteId, fromId, alongShare, isHeldUp }, index): TenderPoint[] => {
    if (phase === 'gone') return []
    const startId = fromId ?? findApparatus(bundle, id)?.stationId ?? ''
    const start = findPlace(bundle, startId), site = findPlace(bundle, siteId)
    const on = alongShare === undefined ? undefined : way(id, startId, siteId)
    const line = on?.kind === 'round' ? on.detour.path : on?.kind === 'planned' && on.path ? on.path : start && site && [start, site]
    const point = isHeldUp ? start : on && line && alongShare !== undefined ? pointAlong(line, alongShare) : site
    return point ? [{ id, point, number: index + 1, ...(isHeldUp && { isHeldUp }) }] : []
  })
}
