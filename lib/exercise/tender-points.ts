import { pointAlong, type Point } from '../geo'
import { findApparatus, shortNames, type Bundle } from '../plan'
import { findPlace } from '../supply'
import { waysNow, type Roads } from './closures'
import type { TenderView } from './view'

export type TenderPoint = { readonly id: string; readonly point: Point; readonly short: string; readonly isHeldUp?: boolean }

/**
 * Tenders where they are: at their station until they roll, at their site, or as far along the way they drive now as they have come. Those released, and those that come from no station, are nowhere.
 *
 * @param roads what is closed; absent: nothing
 */
export function tenderPoints(bundle: Bundle, tenders: readonly TenderView[], roads: Roads = { closed: [], detours: [] }): TenderPoint[] {
  const short = shortNames(tendersOf(bundle))
  const [way, planned] = [waysNow(bundle, roads), waysNow(bundle, { closed: [], detours: [] })]
  return tenders.flatMap(({ id, phase, siteId, fromId, alongShare, rolls_s, isHeldUp, isOnPlannedWay }): TenderPoint[] => {
    if (phase === 'gone') return []
    const startId = fromId ?? findApparatus(bundle, id)?.stationId ?? ''
    const start = findPlace(bundle, startId), site = findPlace(bundle, siteId)
    const on = alongShare === undefined ? undefined : (isOnPlannedWay ? planned : way)(id, startId, siteId)
    const line = on?.kind === 'round' ? on.detour.path : on?.kind === 'planned' && on.path ? on.path : start && site && [start, site]
    const point = isHeldUp || rolls_s !== undefined ? start : line && alongShare !== undefined ? pointAlong(line, alongShare) : phase === 'coming' ? undefined : site
    return point ? [{ id, point, short: short.get(id) ?? id, ...(isHeldUp && { isHeldUp }) }] : []
  })
}

/** Every tender that could ever be in it: marks of those that are must not hang on who else is. */
export const tendersOf = ({ district }: Pick<Bundle, 'district'>): { id: string; name: string }[] => district.apparatus.filter(({ kind }) => kind === 'tender').map(({ id, name }) => ({ id, name }))
