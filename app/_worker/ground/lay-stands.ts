import { distanceM, type Point } from '@/lib/geo'
import { findApparatus, findStation, type District, type Lay, type LegAsk } from '@/lib/plan'
import { feetFromMetres } from '@/lib/units'
import type { RoadDesk } from '../road-desk'

/** Places along a lay are looked at this far apart. */
const STEP_FT = 100
/** A pumper on a road takes hose that lies so near. Assumed. */
const BESIDE_FT = 60

/**
 * Where a pumper of a lay may stand on a road that it can reach: places along the way, each beside a road to which every pumper of
 * the lay can drive from its station as it is.
 *
 * A pumper without a station is asked for from the near end of the lay.
 *
 * @returns level feet along the way, rising
 */
export function layStands(desk: Pick<RoadDesk, 'findFrom'>, district: District, { points, pumperIds }: Pick<Lay, 'points' | 'pumperIds'>): number[] {
  const [near] = points
  if (!near) return []
  const starts = pumperIds.map((id) => {
    const unit = findApparatus({ district }, id)
    const { full_lb, height_ft, width_ft } = unit ?? {}
    return {
      from: findStation({ district }, unit?.stationId)?.point ?? near, via: [],
      ...(full_lb !== undefined && { gross_lb: full_lb }), ...(height_ft !== undefined && { height_ft }), ...(width_ft !== undefined && { width_ft }),
    }
  })
  const reaches = (ask: LegAsk): boolean => {
    const found = desk.findFrom(ask, 'from')
    if ('code' in found) return false
    const last = found.path[found.path.length - 1] ?? ask.from
    return feetFromMetres(distanceM(last, ask.to)) <= BESIDE_FT
  }
  return placesAlong(points).filter(({ point }) => starts.every((start) => reaches({ ...start, to: point }))).map(({ at_ft }) => at_ft)
}

function placesAlong(points: readonly Point[]): { at_ft: number; point: Point }[] {
  const places: { at_ft: number; point: Point }[] = []
  let far_ft = 0
  points.forEach((from, i) => {
    const to = points[i + 1]
    const leg_ft = to ? feetFromMetres(distanceM(from, to)) : 0
    const parts = Math.max(1, Math.ceil(leg_ft / STEP_FT))
    for (let k = 0; k < (to ? parts : 1); k++) {
      const share = k / parts
      places.push({ at_ft: far_ft + share * leg_ft, point: to ? { lat: from.lat + share * (to.lat - from.lat), lon: from.lon + share * (to.lon - from.lon) } : from })
    }
    far_ft += leg_ft
  })
  return places
}
