import type { Point } from '../geo'
import type { Bundle, Leg } from '../plan'
import { legUses, type LegUse } from '../supply'

/**
 * Finds the ways that a bundle drives and does not hold. The only step that needs the road graph: in the app
 * the worker's roads answer it, without them it gives the bundle back as it is.
 */
export type ResolveWays = (bundle: Bundle) => Bundle

/** A bundle with routed ways that drives one which nobody has found: a straight line in its place would make any new place look near. */
export function lacksWays(bundle: Bundle): boolean {
  if (!bundle.district.roads && bundle.legs.length === 0) return false
  const known = new Set(bundle.legs.map(({ key }) => key))
  return legUses(bundle).some(({ key }) => !known.has(key))
}

/** A way between a fill and a dump site with the line it takes. */
export type DrivenLeg = { readonly use: LegUse; readonly leg: Leg }

/** The routed ways that tenders shuttle on, each line once, whoever drives it. */
export function shuttleLegs(bundle: Bundle): DrivenLeg[] {
  const legs = new Map(bundle.legs.map((leg) => [leg.key, leg]))
  const sites = new Set<string>([...bundle.plan.fillSites, ...bundle.plan.dumpSites].map(({ id }) => id))
  const seen = new Set<string>()
  return legUses(bundle).flatMap((use) => {
    const leg = legs.get(use.key)
    if (!leg || leg.by === 'none' || leg.path.length < 2 || !sites.has(use.fromId) || !sites.has(use.toId)) return []
    const line = lineKey(leg.path)
    return seen.has(line) ? [] : (seen.add(line), [{ use, leg }])
  })
}

/** The same for a line and its reverse. */
function lineKey(path: readonly Point[]): string {
  const points = path.map(({ lat, lon }) => `${lat.toFixed(5)},${lon.toFixed(5)}`)
  return [points.join(';'), points.toReversed().join(';')].sort()[0] ?? ''
}

const CLOSURE_ID = 'advice-closure'

/**
 * The bundle with the road closed at a point, its ways found anew round it. What was noted of ways between
 * the given places no longer holds and is left out.
 */
export function withClosure(bundle: Bundle, at: Point, placeIds: readonly string[], resolve: ResolveWays): Bundle {
  const { district, plan } = bundle
  const isBetween = ({ fromId, toId }: { fromId: string; toId: string }) => placeIds.includes(fromId) && placeIds.includes(toId)
  return resolve({
    ...bundle,
    district: { ...district, roadNotes: [...district.roadNotes, { id: CLOSURE_ID, name: CLOSURE_ID, point: at, closed: true }] },
    plan: { ...plan, legNotes: plan.legNotes.filter((note) => !isBetween(note)) },
  })
}
