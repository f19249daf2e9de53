import { distanceM, pointAlong, type Point } from '../../geo'
import { findLegNote, legUses } from '../../supply'
import type { Bundle, EditBody } from '../../plan'
import type { Candidate } from '../candidate'
import { assumedEffort } from '../effort'
import { lacksWays, shuttleLegs, withClosure, type ResolveWays } from '../ways-with-closure'
import { freshId } from './fresh-id'

/** Another road is worth a look only where it really is another: this far from the first at its widest. */
const LEAST_APART_M = 150

/**
 * For each way between fill and dump site the road that is left when it is closed half way, as a point to drive by.
 *
 * It is never the quickest by the road data; it can still gain where the first road is narrow, is shared by
 * both directions, or has a measured time that is worse. Ways with a measured time or distance are left alone.
 */
export function otherRoads(bundle: Bundle, resolve: ResolveWays): Candidate[] {
  if (!bundle.district.roads) return []
  return shuttleLegs(bundle).flatMap(({ use, leg }): Candidate[] => {
    const note = findLegNote(bundle, use.fromId, use.toId, use.apparatusId)
    if (note && (note.via?.length || note.travel_s !== undefined || note.distance_mi !== undefined || note.apparatusId !== undefined)) return []
    const closed = withClosure(bundle, pointAlong(leg.path, 0.5), [use.fromId, use.toId], resolve)
    if (lacksWays(closed)) return []
    const again = legUses(closed).find((one) => one.fromId === use.fromId && one.toId === use.toId && one.apparatusId === use.apparatusId)
    const other = closed.legs.find(({ key }) => key === again?.key)
    if (!other || other.by === 'none') return []
    const via = farthestFrom(other.path, leg.path)
    if (!via) return []
    const edit: EditBody = note
      ? { kind: 'setFields', collection: 'legNotes', id: note.id, set: { via: [via] } }
      : { kind: 'addItem', collection: 'legNotes', item: { id: freshId(bundle, `way-${use.fromId.slice(0, 24)}-${use.toId.slice(0, 24)}`), fromId: use.fromId, toId: use.toId, via: [via] } }
    return [{
      id: `otherRoad:${use.fromId}:${use.toId}:${via.lat.toFixed(5)},${via.lon.toFixed(5)}`, group: `otherRoad:${use.fromId}:${use.toId}`, kind: 'otherRoad',
      subjectIds: [use.fromId, use.toId],
      values: { distance_mi: other.distance_mi, before_mi: leg.distance_mi, roads: (other.roads ?? []).slice(0, 3).join(', ') },
      edits: [edit], effort: { ...assumedEffort.otherRoad, apparatusCount: 0 }, provisos: [],
    }]
  })
}

/** The point of a line that lies farthest from all points of another; undefined where they hardly part. */
function farthestFrom(line: readonly Point[], other: readonly Point[]): Point | undefined {
  const samples = Array.from({ length: 41 }, (_, index) => pointAlong(line, index / 40))
  const rest = Array.from({ length: 81 }, (_, index) => pointAlong(other, index / 80))
  const [best] = samples
    .map((point) => ({ point, apart_m: Math.min(...rest.map((there) => distanceM(point, there))) }))
    .sort((a, b) => b.apart_m - a.apart_m)
  return best && best.apart_m >= LEAST_APART_M ? best.point : undefined
}
