import { distanceM, type Point } from '@/lib/geo'
import type { District, DraftSite, EditBody, Plan } from '@/lib/plan'
import { FIRE_GROUND } from '@/lib/supply'
import { feetFromMetres } from '@/lib/units'
import { say } from '../_text'

/** What can be placed on the planner's map. */
export type Placed = 'fillSite' | 'dumpSite' | 'fireGround' | 'station'

/**
 * A fill site this near a draft site stands at it: two lengths of fill line and a tap with a thumb on a phone (common
 * practice, no source). Farther off the card asks.
 */
export const JOIN_REACH_FT = 100

/** Draft sites of the survey by their distance from a place, nearest first. */
export const draftSitesNear = ({ draftSites }: Pick<District, 'draftSites'>, point: Point): { site: DraftSite; away_ft: number }[] =>
  draftSites.map((site) => ({ site, away_ft: feetFromMetres(distanceM(site.point, point)) })).sort((a, b) => a.away_ft - b.away_ft)

type Docs = { district: District; plan: Plan }
type Tap = { point: Point; onSiteId?: string | undefined }
type PlaceEdit = { district: EditBody[]; plan: EditBody[]; id: string; label: string }

/**
 * The edits that place something where the map was tapped, and the id under which it is then chosen. A tap on a symbol
 * places there; a fill site on a draft site or source takes it, and the fire ground on a hazard takes that hazard.
 *
 * @param tap.onSiteId the place whose symbol was tapped
 */
export function placeEdit(kind: Placed, { point, onSiteId }: Tap, { district, plan }: Docs, newId: () => string): PlaceEdit {
  const add = (collection: string, name: string, more: object = {}): EditBody & { kind: 'addItem' } => ({ kind: 'addItem', collection, item: { id: newId(), name, point, ...more } })
  if (kind === 'fireGround') {
    const hazard = district.hazards.find(({ id }) => id === onSiteId)
    const set = hazard ? { hazardId: hazard.id, fireGround: hazard.point } : { fireGround: point }
    return { district: [], plan: [{ kind: 'setFields', set }], id: FIRE_GROUND, label: say('plan.placed', { name: hazard?.name ?? say('plan.fire-ground') }) }
  }
  if (kind === 'station') {
    const body = add('stations', say('plan.station-name'))
    return { district: [body], plan: [], id: body.item.id, label: say('plan.place.station') }
  }
  const isFill = kind === 'fillSite'
  const number = (isFill ? plan.fillSites : plan.dumpSites).length + 1
  const name = say(isFill ? 'plan.fill-name' : 'plan.dump-name', { number })
  const body = add(isFill ? 'fillSites' : 'dumpSites', name, isFill ? waterOf(district, point, onSiteId) : firstTank(district, plan))
  return { district: [], plan: [body], id: body.item.id, label: say('plan.placed', { name }) }
}

/** The draft site or source under the tap; else a draft site so near that no other can be meant. */
function waterOf(district: District, point: Point, onSiteId: string | undefined): { draftSiteId?: string; sourceId?: string; point?: Point } {
  const tapped = district.draftSites.find(({ id }) => id === onSiteId)
  if (tapped) return { draftSiteId: tapped.id, point: tapped.point }
  if (district.sources.some(({ id }) => id === onSiteId)) return { sourceId: onSiteId ?? '' }
  const [near] = draftSitesNear(district, point)
  return near && near.away_ft <= JOIN_REACH_FT ? { draftSiteId: near.site.id } : {}
}

/** The first portable tank that no other dump site uses. */
function firstTank(district: District, plan: Plan): { portableTankIds?: string[] } {
  const used = new Set(plan.dumpSites.flatMap(({ portableTankIds }) => (portableTankIds ?? []) as string[]))
  const free = district.equipment.find(({ kind, id }) => kind === 'portableTank' && !used.has(id))
  return free ? { portableTankIds: [free.id] } : {}
}
