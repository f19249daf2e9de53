import { useMemo } from 'react'
import { distanceM, type Point } from '@/lib/geo'
import { partOfLink } from '../_charts/supply-strip'
import type { MapRoute, MapSite } from '../_map'
import type { PlanAnswerState } from '../_worker'
import { FIRE_GROUND, findPlace, type LegUse, type SupplyResult } from '@/lib/supply'
import { isCounted, type District, type Leg, type NoLeg, type Plan } from '@/lib/plan'
import { formatGiven, say, type NameOf, type UnitSystem } from '../_text'

/** Sites of the plan and of the survey, as the map shows them. */
export function usePlanSites(district: District | undefined, plan: Plan | undefined, result: SupplyResult | undefined, names: NameOf, selectedId: string | undefined, system: UnitSystem): MapSite[] {
  return useMemo(() => {
    if (!district || !plan) return []
    const limit = result?.limitingLink
    const note = (id: string) => {
      const site = result?.sites.find((one) => one.id === id)
      const limits = limit?.subjectId === id && partOfLink[limit.kind] !== 'road' ? say('plan.site.limit-note') : undefined
      const rate = site?.kind === 'fillSite' && site.bayRate_gpm[0] ? say('plan.site.fill-note', { rate: formatGiven(site.bayRate_gpm[0], system) }) : undefined
      return { ...((limits ?? rate) !== undefined && { note: limits ?? rate }), ...(limits && { isMarked: true }) }
    }
    const own = (id: string) => ({ isMovable: true, isChosen: id === selectedId })
    const used = new Set<string>(plan.fillSites.flatMap(({ draftSiteId, sourceId }) => [draftSiteId ?? [], sourceId ?? []].flat()))
    const fire = findPlace({ district, plan }, FIRE_GROUND)
    return [
      ...plan.fillSites.map((site, index) => ({ id: site.id as string, kind: 'fillSite' as const, point: site.point, name: site.name, ...(plan.fillSites.length > 1 && { letter: `F${index + 1}` }), ...own(site.id), ...note(site.id) })),
      ...plan.dumpSites.map((site, index) => ({ id: site.id as string, kind: 'dumpSite' as const, point: site.point, name: site.name, ...(plan.dumpSites.length > 1 && { letter: `U${index + 1}` }), ...own(site.id), ...note(site.id) })),
      ...(fire ? [{ id: FIRE_GROUND, kind: 'fireGround' as const, point: fire, name: names(FIRE_GROUND) ?? FIRE_GROUND, ...own(FIRE_GROUND), ...(plan.hazardId && isSamePlace(district.hazards.find(({ id }) => id === plan.hazardId)?.point, fire) && { note: say('plan.own-hazard') }) }] : []),
      ...(plan.hoseLays ?? []).filter(isCounted).flatMap(({ id, name, points }) => { const [point] = points; return point ? [{ id: id as string, kind: 'hosePoint' as const, point, name, isChosen: id === selectedId }] : [] }),
      ...district.hazards.filter(({ id, point }) => id !== plan.hazardId || !isSamePlace(point, fire)).map(({ id, name, point }) => ({
        id: id as string, kind: 'hazard' as const, point, name, isChosen: id === selectedId,
        ...(id === plan.hazardId ? { note: say('plan.own-hazard') } : { isGhost: true }),
      })),
      ...district.stations.map(({ id, name, point }) => ({ id: id as string, kind: 'station' as const, point, name, isChosen: id === selectedId })),
      ...district.draftSites.filter(({ id }) => !used.has(id)).map(({ id, name, point }) => ({ id: id as string, kind: 'draftSite' as const, point, name, isGhost: true })),
      ...district.sources.filter(({ id }) => !used.has(id) && !district.draftSites.some(({ sourceId }) => sourceId === id)).map(({ id, name, point }) => ({ id: id as string, kind: 'source' as const, point, name, isGhost: true })),
      ...district.roadNotes.map(({ id, name, point }) => ({ id: id as string, kind: 'roadNote' as const, point, name, isGhost: true })),
    ]
  }, [district, plan, result, names, selectedId, system])
}

/** Nearer than this one symbol would lie on the other. */
const SAME_PLACE_M = 15

const isSamePlace = (a: Point | undefined, b: Point | undefined): boolean => a !== undefined && b !== undefined && distanceM(a, b) < SAME_PLACE_M

/** The ways between the plan's sites, each once for each load. */
export function usePlanRoutes({ legs, uses }: Pick<PlanAnswerState, 'legs' | 'uses'>, plan: Plan | undefined, selectedId: string | undefined): MapRoute[] {
  return useMemo(() => routesFrom(legs, uses, plan, selectedId), [legs, uses, plan, selectedId])
}

/** Hose lays that count in the plan, over the ground they lie on. */
const layRoutes = (plan: Plan | undefined, selectedId: string | undefined): MapRoute[] =>
  (plan?.hoseLays ?? []).filter(isCounted).map(({ id, points }) => ({ id: `lay ${id}`, path: points, load: 'full', by: 'handbook', isChosen: id === selectedId }))

/** Ways from the stations are drawn faintly: they are driven once. */
export function routesFrom(legs: readonly (Leg | NoLeg)[], uses: readonly LegUse[], plan: Plan | undefined, selectedId?: string): MapRoute[] {
  const siteIds = new Set<string>([...(plan?.fillSites ?? []), ...(plan?.dumpSites ?? [])].map(({ id }) => id))
  const byKey = new Map(legs.map((leg) => [leg.key, leg]))
  const routes = new Map<string, MapRoute>()
  for (const { key, fromId, toId, load, ask } of uses) {
    const leg = byKey.get(key)
    if (leg?.by === 'none') continue
    const id = `${fromId}>${toId}>${load}>${key}`
    const path = leg && leg.path.length > 1 ? leg.path : [ask.from, ...ask.via, ask.to]
    if (!routes.has(id)) routes.set(id, { id, path, load, by: leg?.by ?? 'handbook', isStraight: !leg || leg.path.length < 2, isChosen: fromId === selectedId || toId === selectedId, isQuiet: !siteIds.has(fromId) })
  }
  return [...routes.values(), ...layRoutes(plan, selectedId)]
}
