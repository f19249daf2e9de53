import { nearestOnLine, type Point } from '../geo'
import type { Bundle, Detour } from '../plan'
import type { ShuttleSpec, TenderSpec, WaySpec } from '../shuttle'
import { legUses } from '../supply'

/** A place on a road where nobody gets through. */
export type Closure = { readonly id: string; readonly point: Point }

/** The roads as they are: what is closed, and the ways round that are known. */
export type Roads = { readonly closed: readonly Closure[]; readonly detours: readonly Detour[] }

/** A way that passes as near as this to a closed place goes through it: less than a carriageway. */
const ON_ROAD_M = 12

/** Longer than any exercise: a drive that takes it is one that does not get there. Still a number, so that it can be reckoned with. */
export const NEVER_S = 10_000_000

/** Whether a time means that it never comes to it. */
export const isNever = (time_s: number): boolean => time_s >= NEVER_S / 2

/** The share of a way at which it first meets a closed place; undefined where it meets none. */
export function meetsAt(path: readonly Point[], closed: readonly Closure[]): number | undefined {
  if (path.length < 2) return undefined
  const shares = closed.flatMap(({ point }) => {
    const { distance_m, share } = nearestOnLine(path, point)
    return distance_m <= ON_ROAD_M ? [share] : []
  })
  return shares.length > 0 ? Math.min(...shares) : undefined
}

/** The quickest way round that meets no closed place; undefined where none is known. */
const findDetour = ({ closed, detours }: Roads, apparatusId: string, fromId: string, toId: string): Detour | undefined =>
  detours
    .filter((way) => way.apparatusId === apparatusId && way.fromId === fromId && way.toId === toId && meetsAt(way.path, closed) === undefined)
    .sort((a, b) => a.travel_s - b.travel_s)[0]

export type WayNow = { readonly kind: 'planned'; readonly path?: readonly Point[] } | { readonly kind: 'round'; readonly detour: Detour } | { readonly kind: 'none' }

/**
 * The way that a vehicle takes now between two places of the plan.
 *
 * A way whose line nobody knows, one that was measured or is a straight line, is taken to be open: nothing says that it leads over the
 * closed place.
 */
export function waysNow(bundle: Bundle, roads: Roads): (apparatusId: string, fromId: string, toId: string) => WayNow {
  const paths = pathsOf(bundle)
  return (apparatusId, fromId, toId) => {
    const path = paths.get(wayKey(apparatusId, fromId, toId))
    if (!path) return { kind: 'planned' }
    if (meetsAt(path, roads.closed) === undefined) return { kind: 'planned', path }
    const detour = findDetour(roads, apparatusId, fromId, toId)
    return detour ? { kind: 'round', detour } : { kind: 'none' }
  }
}

/** Lines of a plan's ways, found once for the same documents: a screen asks at every tick. */
const kept = new WeakMap<Bundle, ReadonlyMap<string, readonly Point[] | undefined>>()

function pathsOf(bundle: Bundle): ReadonlyMap<string, readonly Point[] | undefined> {
  const known = kept.get(bundle)
  if (known) return known
  const legs = new Map(bundle.legs.map((leg) => [leg.key, leg]))
  const paths = new Map(legUses(bundle).map((use) => {
    const leg = legs.get(use.key)
    return [wayKey(use.apparatusId, use.fromId, use.toId), leg && leg.by !== 'none' && leg.path.length > 1 ? leg.path : undefined]
  }))
  kept.set(bundle, paths)
  return paths
}

const wayKey = (apparatusId: string, fromId: string, toId: string): string => `${apparatusId}>${fromId}>${toId}`

/** Tenders between their sites round what is closed; a tender that has no way round sets off and never gets there. */
export function roundClosures(spec: ShuttleSpec, bundle: Bundle, roads: Roads): readonly TenderSpec[] {
  if (roads.closed.length === 0) return spec.tenders
  const now = waysNow(bundle, roads)
  const time = (id: string, fromId: string | undefined, toId: string | undefined, planned_s: number): number => {
    const way = now(id, fromId ?? '', toId ?? '')
    return way.kind === 'planned' ? planned_s : way.kind === 'round' ? way.detour.travel_s : NEVER_S
  }
  const round = <W extends WaySpec>(id: string, way: W): W => {
    const [dumpId, fillId] = [spec.dumps[way.dumpIndex]?.id, spec.fills[way.fillIndex]?.id]
    const toFill_s = time(id, dumpId, fillId, way.toFill_s)
    const toDump_s = time(id, fillId, dumpId, way.toDump_s)
    if (toFill_s === way.toFill_s && toDump_s === way.toDump_s) return way
    // The one-lane stretches of a plan lie on the way that it drives.
    const { lanesToFill, lanesToDump, ...rest } = way
    return { ...rest, toFill_s, toDump_s, ...(lanesToFill && toFill_s === way.toFill_s && { lanesToFill }), ...(lanesToDump && toDump_s === way.toDump_s && { lanesToDump }) } as W
  }
  return spec.tenders.map((tender) => {
    const own = round(tender.id, tender)
    return own.ways ? { ...own, ways: own.ways.map((way) => round(tender.id, way)) } : own
  })
}
