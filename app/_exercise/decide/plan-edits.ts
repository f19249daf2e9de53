import { replaceSite } from '@/lib/exercise'
import type { Point } from '@/lib/geo'
import type { Bundle, DraftSite, EditBody, Lay } from '@/lib/plan'
import { newLay } from '../../_hose/new-lay'
import type { LayEnd } from '../../_hose/lay-ends'

/** Fill line of a site that is set up in a hurry: one bay, beside the pumper. */
const FIRST_BAY = { bayCount: 1 } as const

/** Tenders of the district that are not in the plan, or pumpers that stand nowhere in it. */
export function freeUnits({ district, plan }: Bundle, kind: 'tender' | 'pumper'): Bundle['district']['apparatus'] {
  const busy = new Set<string | undefined>([
    plan.firstDueId, ...plan.tenders.map(({ tenderId }) => tenderId as string), ...plan.dumpSites.map(({ nurseId }) => nurseId as string | undefined),
    ...[...plan.fillSites, ...plan.dumpSites].map(({ pumperId }) => pumperId as string | undefined), ...(plan.hoseLays ?? []).filter(({ isLeftOut }) => isLeftOut !== true).flatMap(({ pumperIds }) => pumperIds as string[]),
  ])
  return district.apparatus.filter((unit) => !busy.has(unit.id) && (kind === 'tender' ? unit.kind === 'tender' : unit.kind !== 'tender' && (unit.rated_gpm ?? 0) > 0))
}

type To = { readonly newId: string; readonly pumperId?: string | undefined; readonly tenderIds?: readonly string[] }

/** A fill site at another draft site: in place of one there is, or one more, to which some tenders go. */
export function fillSiteEdits(bundle: Bundle, place: DraftSite, insteadOf: string | undefined, { newId, pumperId, tenderIds = [] }: To): EditBody[] {
  const at = { name: place.name, point: place.point, draftSiteId: place.id, ...(place.sourceId && { sourceId: place.sourceId }) }
  if (insteadOf !== undefined) {
    const suction = bundle.plan.fillSites.find(({ id }) => id === insteadOf)?.suction
    return replaceSite(bundle, insteadOf, { ...at, ...(pumperId && { pumperId }), ...(suction && place.hoseRun_ft !== undefined && { suction: { ...suction, length_ft: place.hoseRun_ft } }) }, newId)
  }
  return [
    { kind: 'addItem', collection: 'fillSites', item: { id: newId, ...at, ...FIRST_BAY, ...(pumperId && { pumperId }) } },
    ...sentTo(bundle, 'fillSiteId', newId, tenderIds),
  ]
}

/** A dump site at a point: in place of one there is, or one more. One more carries none of the fire until it is told to: it is not ready yet. */
export function dumpSiteEdits(bundle: Bundle, point: Point, name: string, insteadOf: string | undefined, { newId, pumperId, tenderIds = [] }: To, portableTankIds: readonly string[] = []): EditBody[] {
  if (insteadOf !== undefined) return replaceSite(bundle, insteadOf, { point, ...(pumperId && { pumperId }) }, newId)
  return [
    { kind: 'addItem', collection: 'dumpSites', item: { id: newId, name, point, demandShare: 0, ...(pumperId && { pumperId }), ...(portableTankIds.length > 0 && { portableTankIds }) } },
    ...keepShares(bundle),
    ...sentTo(bundle, 'dumpSiteId', newId, tenderIds),
  ]
}

/** The fire is fed from these dump sites alike, and from no other. */
export const carryEdits = ({ plan }: Bundle, ids: readonly string[]): EditBody[] =>
  plan.dumpSites.map(({ id }): EditBody => ({ kind: 'setFields', collection: 'dumpSites', id, set: { demandShare: ids.includes(id) ? 1 / ids.length : 0 } }))

/** Where nobody has entered shares they are alike, and stay so whatever comes beside. */
const keepShares = ({ plan }: Bundle): EditBody[] =>
  plan.dumpSites.some(({ demandShare }) => demandShare !== undefined) ? [] : plan.dumpSites.map(({ id }): EditBody => ({ kind: 'setFields', collection: 'dumpSites', id, set: { demandShare: 1 / plan.dumpSites.length } }))

const sentTo = ({ plan }: Bundle, field: 'fillSiteId' | 'dumpSiteId', siteId: string, tenderIds: readonly string[]): EditBody[] =>
  plan.tenders.filter(({ tenderId }) => tenderIds.includes(tenderId)).map(({ id }): EditBody => ({ kind: 'setFields', collection: 'tenders', id, set: { [field]: siteId } }))

/** Bays of a fill site, or positions of a dump site, from now on. */
export function placesEdits({ plan }: Bundle, siteId: string, count: number): EditBody[] {
  const isFill = plan.fillSites.some(({ id }) => id === siteId)
  return [{ kind: 'setFields', collection: isFill ? 'fillSites' : 'dumpSites', id: siteId, set: { [isFill ? 'bayCount' : 'positionCount']: count } }]
}

/** A hose lay between two places of pumpers that are named, of the hose the district has most of. */
export function layFor({ district, plan }: Bundle, from: LayEnd, to: LayEnd, pumperIds: readonly string[], newId: () => string): Lay | undefined {
  const made = newLay({ district, plan, begins: [from], goals: [to], name: `${from.name} – ${to.name}`.slice(0, 120), newId })
  return made && { ...made, pumperIds: [...pumperIds] }
}
