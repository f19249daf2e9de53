import type { Point } from '@/lib/geo'
import type { District, EditBody, Plan } from '@/lib/plan'
import { FIRE_GROUND } from '@/lib/supply'
import { say } from '../_text'

/** What can be placed on the planner's map. */
export type Placed = 'fillSite' | 'dumpSite' | 'fireGround' | 'station'

/** The edits that place something at a point, and the id under which it is then chosen. */
export function placeEdit(kind: Placed, point: Point, { district, plan }: { district: District; plan: Plan }, newId: () => string): { district: EditBody[]; plan: EditBody[]; id: string; label: string } {
  const add = (collection: string, name: string, more: object = {}): EditBody & { kind: 'addItem' } => ({ kind: 'addItem', collection, item: { id: newId(), name, point, ...more } })
  if (kind === 'fireGround') return { district: [], plan: [{ kind: 'setFields', set: { fireGround: point } }], id: FIRE_GROUND, label: say('plan.placed', { name: say('plan.fire-ground') }) }
  if (kind === 'station') {
    const body = add('stations', say('plan.station-name'))
    return { district: [body], plan: [], id: body.item.id, label: say('plan.place.station') }
  }
  const isFill = kind === 'fillSite'
  const number = (isFill ? plan.fillSites : plan.dumpSites).length + 1
  const name = say(isFill ? 'plan.fill-name' : 'plan.dump-name', { number })
  const body = add(isFill ? 'fillSites' : 'dumpSites', name, isFill ? nearestDraftSite(district, point) : firstTank(district, plan))
  return { district: [], plan: [body], id: body.item.id, label: say('plan.placed', { name }) }
}

/** A fill site placed on a draft site of the survey stands there. */
const REACH_DEGREES = 0.0015

function nearestDraftSite(district: District, point: Point): { draftSiteId?: string } {
  const near = district.draftSites
    .map((site) => ({ site, off: Math.hypot(site.point.lat - point.lat, (site.point.lon - point.lon) * Math.cos((point.lat * Math.PI) / 180)) }))
    .filter(({ off }) => off < REACH_DEGREES)
    .sort((a, b) => a.off - b.off)[0]
  return near ? { draftSiteId: near.site.id } : {}
}

/** The first portable tank that no other dump site uses. */
function firstTank(district: District, plan: Plan): { portableTankIds?: string[] } {
  const used = new Set(plan.dumpSites.flatMap(({ portableTankIds }) => (portableTankIds ?? []) as string[]))
  const free = district.equipment.find(({ kind, id }) => kind === 'portableTank' && !used.has(id))
  return free ? { portableTankIds: [free.id] } : {}
}
