import { lacksWays, shuttleLegs, type ResolveWays } from '../advise'
import { pointAlong, type Point } from '../geo'
import type { Bundle, Detour } from '../plan'
import { legUses } from '../supply'
import { meetsAt, type Closure } from './closures'

/** A road that tenders drive, closed at a place, with the ways round it. */
export type RoadClosure = {
  readonly fromId: string
  readonly toId: string
  readonly point: Point
  readonly detours: readonly Detour[]
  /** Vehicles of the plan that have no way round. */
  readonly stuckIds: readonly string[]
}

/** Each road between fill and dump site is closed half way: far from both, so that the way round is a real one. */
const CLOSED_AT = 0.5

/**
 * Roads between the sites of a plan that could be closed, one for each pair of sites, whoever drives it and whichever way.
 *
 * @param resolve finds ways over the roads of the district
 * @param already closed; the ways round keep clear of it too
 * @returns none where the roads are not known: nobody can say whether there is a way round
 */
export function roadClosures(bundle: Bundle, resolve: ResolveWays, already: readonly Closure[] = []): RoadClosure[] {
  if (!bundle.district.roads) return []
  const roads = new Map(shuttleLegs(bundle).toReversed().map((driven) => [[driven.use.fromId, driven.use.toId].sort().join('~'), driven]))
  return [...roads.values()].reverse().flatMap(({ use: { fromId, toId }, leg }): RoadClosure[] => {
    const point = pointAlong(leg.path, CLOSED_AT)
    const round = detoursRound(bundle, [...already, { id: 'closed', point }], resolve)
    return round ? [{ fromId, toId, point, ...round }] : []
  })
}

/**
 * Ways of a plan round closed places.
 *
 * @returns for each way that meets a closed place the way round, and who has none; undefined where the roads are not known
 */
export function detoursRound(bundle: Bundle, closed: readonly Closure[], resolve: ResolveWays): Pick<RoadClosure, 'detours' | 'stuckIds'> | undefined {
  const { district } = bundle
  const notes = closed.map(({ id, point }) => ({ id, name: id, point, closed: true }))
  const changed = resolve({ ...bundle, district: { ...district, roadNotes: [...district.roadNotes, ...notes] } })
  if (lacksWays(changed)) return undefined
  const [legs, round] = [bundle, changed].map((one) => new Map(one.legs.map((leg) => [leg.key, leg])))
  const keys = new Map(legUses(changed).map((use) => [`${use.apparatusId}>${use.fromId}>${use.toId}`, use.key]))
  const detours: Detour[] = []
  const stuck = new Set<string>()
  for (const { key, apparatusId, fromId, toId } of legUses(bundle)) {
    const leg = legs!.get(key)
    if (!leg || leg.by === 'none' || meetsAt(leg.path, closed) === undefined) continue
    const other = round!.get(keys.get(`${apparatusId}>${fromId}>${toId}`) ?? '')
    // A road note that missed its road closes nothing.
    if (!other || other.by === 'none' || other.path.length < 2 || meetsAt(other.path, closed) !== undefined) stuck.add(apparatusId)
    else detours.push({ apparatusId, fromId, toId, distance_mi: other.distance_mi, travel_s: other.travel_s, path: other.path })
  }
  return { detours, stuckIds: [...stuck] }
}
