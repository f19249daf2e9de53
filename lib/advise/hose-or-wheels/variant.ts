import { distanceM, type Point } from '../../geo'
import { FIRE_GROUND, findDraftSite, type Bundle, type DumpSite, type FillSite, type Lay, type Plan } from '../../plan'
import { defaults, findPlace, wayDistances_ft } from '../../supply'
import { stretchesFor, type Equipment } from './equipment'

/** Water that may be used, and the way from there to the fire ground that a hose would take; `isAcross`: a straight line over open ground,
 * and then `road` is the way along roads, where one leads there: tenders take over only from a road. */
export type Candidate = { readonly fromId: string; readonly name: string; readonly point: Point; readonly way: readonly Point[]; readonly isAcross?: boolean; readonly road?: readonly Point[] }

/** Tenders that two bays serve better than one. Assumed. */
const TENDERS_A_BAY = 3

/** A fill site at a place; with a pumper it drafts there, without one a hose lay is its supply. */
export function fillAt(bundle: Pick<Bundle, 'district' | 'plan'>, { fromId, name, point }: Pick<Candidate, 'fromId' | 'name' | 'point'>, tenderCount: number, pumperId?: string): FillSite {
  const known = bundle.plan.fillSites.find((site) => (site.draftSiteId ?? site.sourceId) === fromId)
  const isDraftSite = findDraftSite(bundle, fromId) !== undefined
  const bayCount = known?.bayCount ?? (tenderCount > TENDERS_A_BAY ? 2 : 1)
  const base = { id: pumperId !== undefined && known ? known.id : 'wheels-fill', name, point, bayCount, ...(known?.bayOrder && { bayOrder: known.bayOrder }), ...(known?.fillLine && { fillLine: known.fillLine }) }
  if (pumperId === undefined) return base
  return { ...base, pumperId: pumperId, ...(isDraftSite ? { draftSiteId: fromId } : { sourceId: fromId }) }
}

/** The plan's own first dump site, else one at the fire ground with all portable tanks of the district. */
export function dumpOf({ district, plan }: Pick<Bundle, 'district' | 'plan'>, pumperId?: string): DumpSite | undefined {
  const [own] = plan.dumpSites
  if (own) return { ...own, ...(own.pumperId === undefined && pumperId !== undefined && { pumperId: pumperId }) }
  const point = findPlace({ district, plan }, FIRE_GROUND)
  if (!point) return undefined
  const tanks = district.equipment.flatMap(({ kind, id }) => (kind === 'portableTank' ? [id] : []))
  return { id: 'wheels-dump', name: 'dump site', point, positionCount: 2, ...(pumperId !== undefined && { pumperId: pumperId }), ...(tanks.length > 0 ? { portableTankIds: tanks.slice(0, 12) } : { tankCapacity_gal: 3000 }) }
}

/** A hose lay along a way, of the hose at hand; undefined where that does not reach. */
export function layAlong(equipment: Equipment, { fromId, name }: Pick<Candidate, 'fromId' | 'name'>, way: readonly Point[], toId: string, pumperIds: readonly string[]): Lay | undefined {
  const way_ft = wayDistances_ft(way).at(-1) ?? 0
  const stretches = stretchesFor(equipment.hose, way_ft * defaults.layFactor.value)
  if (stretches.length === 0 || pumperIds.length === 0 || way.length < 2) return undefined
  return {
    id: 'wheels-lay', name, fromId, toId, points: [...way], pumperIds: [...pumperIds],
    stretches: stretches.map(({ size_in, length_ft, lineCount }, i) => ({ id: `wheels-hose-${i}`, size_in, length_ft, lineCount })),
  }
}

/** The plan with other places and hands; what it asks for and what its officer knows of its ways stays. */
export function planOf(plan: Plan, { fill, dump, lay, tenderIds }: { readonly fill?: FillSite | undefined; readonly dump?: DumpSite | undefined; readonly lay?: Lay | undefined; readonly tenderIds: readonly string[] }): Plan {
  return {
    ...plan,
    fillSites: fill ? [fill] : [], dumpSites: dump ? [dump] : [], oneLanes: [], hoseLays: lay ? [lay] : [],
    tenders: tenderIds.map((id, i) => ({ id: `wheels-task-${i}`, tenderId: id })),
  }
}

/** The first part of a way, to a share of its length. */
export function firstPart(way: readonly Point[], share: number): Point[] {
  const far_m = way.slice(1).map((point, i) => distanceM(way[i] ?? point, point))
  let left_m = share * far_m.reduce((sum, leg_m) => sum + leg_m, 0)
  const part: Point[] = way.slice(0, 1)
  for (const [i, leg_m] of far_m.entries()) {
    const from = way[i], to = way[i + 1]
    if (!from || !to) break
    if (leg_m >= left_m) {
      const along = leg_m > 0 ? left_m / leg_m : 0
      part.push({ lat: from.lat + along * (to.lat - from.lat), lon: from.lon + along * (to.lon - from.lon) })
      return part
    }
    part.push(to)
    left_m -= leg_m
  }
  return part
}
