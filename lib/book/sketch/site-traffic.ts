import { distanceM, type Point } from '../../geo'
import type { Bundle } from '../../plan'
import { findPlace, FIRE_GROUND, legUses, type Load } from '../../supply'
import { headingFrom, headingOfWay } from './heading'
import type { SiteTraffic } from './sketch'

/** Nearer than this a direction means nothing. */
const LEAST_M = 4

/**
 * How tenders come by a site and go: by the ways that the plan drives over roads, the first tender's.
 *
 * @param bundle with its ways found
 * @param siteId a fill or dump site of the plan
 */
export function siteTraffic(bundle: Bundle, siteId: string): SiteTraffic {
  const { plan, district } = bundle
  const fill = plan.fillSites.find(({ id }) => id === siteId)
  const site = fill ?? plan.dumpSites.find(({ id }) => id === siteId)
  if (!site) return {}
  const [comes, goes]: readonly [Load, Load] = fill ? ['empty', 'full'] : ['full', 'empty']
  const arriving_deg = wayHeading(bundle, comes, 'toId', siteId)
  const leaving_deg = wayHeading(bundle, goes, 'fromId', siteId)
  const target = fill
    ? (district.draftSites.find(({ id }) => id === fill.draftSiteId)?.point ?? district.sources.find(({ id }) => id === fill.sourceId)?.point)
    : findPlace(bundle, FIRE_GROUND)
  const water = fill && district.sources.find(({ id }) => id === fill.sourceId)?.point
  const towards = [target, water].find((point): point is Point => point !== undefined && distanceM(site.point, point) > LEAST_M)
  return {
    ...(arriving_deg !== undefined && { arriving_deg }), ...(leaving_deg !== undefined && { leaving_deg }),
    ...(towards && { towards_deg: headingFrom(site.point, towards) }),
  }
}

function wayHeading(bundle: Bundle, load: Load, end: 'toId' | 'fromId', siteId: string): number | undefined {
  const siteIds = new Set<string>([...bundle.plan.fillSites, ...bundle.plan.dumpSites].map(({ id }) => id))
  for (const use of legUses(bundle)) {
    if (use.load !== load || use[end] !== siteId || !siteIds.has(use.fromId) || !siteIds.has(use.toId)) continue
    const leg = bundle.legs.find(({ key }) => key === use.key)
    if (!leg || leg.by === 'none' || leg.path.length < 2) continue
    return headingOfWay(leg.path, end === 'toId' ? 'end' : 'start')
  }
  return undefined
}
