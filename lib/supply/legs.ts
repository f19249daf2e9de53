import { distanceM } from '../geo'
import { handbookTravel_s } from '../hydraulics'
import { issue, type Issue } from '../issue'
import { milesFromMetres } from '../units'
import {
  FIRE_GROUND, findApparatus, isCounted, type Apparatus, type Bundle, type Leg, type LegAsk, type LegNote, type NoLeg, type TenderTask,
} from '../plan'
import type { Point } from '../geo'
import { defaults } from './defaults'
import { shortHash } from './short-hash'

export type Load = 'full' | 'empty'

/** One way that the plan drives: between which places, by whom, how heavy. */
export type LegUse = { key: string; fromId: string; toId: string; apparatusId: string; load: Load; ask: LegAsk }

type Docs = Pick<Bundle, 'district' | 'plan'>

/** Where an id stands on the ground: a station, a site of the plan, the near end of a hose lay, or the fire ground. */
export function findPlace(docs: Docs, id: string | undefined): Point | undefined {
  if (id === undefined) return undefined
  const { plan, district } = docs
  if (id === FIRE_GROUND) return plan.fireGround ?? district.hazards.find((hazard) => hazard.id === plan.hazardId)?.point
  return [...plan.fillSites, ...plan.dumpSites, ...district.stations].find((place) => place.id === id)?.point ?? plan.hoseLays?.find((lay) => lay.id === id)?.points[0]
}

/** The fill and the dump site of a tender's task: the named ones, else the first of the plan. */
export function sitesOfTask({ plan }: Docs, task: { fillSiteId?: string; dumpSiteId?: string }): { fillSiteId?: string; dumpSiteId?: string } {
  return { fillSiteId: task.fillSiteId ?? plan.fillSites[0]?.id, dumpSiteId: task.dumpSiteId ?? plan.dumpSites[0]?.id }
}

/** The pairs of sites a tender may drive between, its own first: one, or more where it chooses. */
export function sitePairs(docs: Docs, task: Pick<TenderTask, 'fillSiteId' | 'dumpSiteId' | 'choosesFill' | 'choosesDump'>): { fillSiteId: string | undefined; dumpSiteId: string | undefined }[] {
  const own = sitesOfTask(docs, task)
  const others = (sites: readonly { id: string }[], mine: string | undefined, chooses: boolean | undefined) =>
    [mine, ...(chooses ? sites.map(({ id }) => id).filter((id) => id !== mine) : [])]
  const fills = others(docs.plan.fillSites, own.fillSiteId, task.choosesFill)
  return others(docs.plan.dumpSites, own.dumpSiteId, task.choosesDump).flatMap((dumpSiteId) => fills.map((fillSiteId) => ({ fillSiteId, dumpSiteId })))
}

/** Every way the plan drives, in the order of its items. Ways with a missing end are left out. */
export function legUses(docs: Docs): LegUse[] {
  const { plan } = docs
  const uses: LegUse[] = []
  const roads = roadsKey(docs)
  const add = (apparatusId: string | undefined, fromId: string | undefined, toId: string | undefined, load: Load) => {
    const unit = findApparatus(docs, apparatusId)
    const from = findPlace(docs, fromId)
    const to = findPlace(docs, toId)
    if (!unit || !from || !to || !fromId || !toId) return
    const ask = legAsk(unit, from, to, load, viaOf(findLegNote(docs, fromId, toId, unit.id)))
    uses.push({ key: `${askKey(ask)}>${roads}`, fromId, toId, apparatusId: unit.id, load, ask })
  }
  add(plan.firstDueId, findApparatus(docs, plan.firstDueId)?.stationId, FIRE_GROUND, 'full')
  for (const site of [...plan.fillSites, ...plan.dumpSites]) add(site.pumperId, findApparatus(docs, site.pumperId)?.stationId, site.id, 'full')
  for (const { id, nurseId } of plan.dumpSites) add(nurseId, findApparatus(docs, nurseId)?.stationId, id, 'full')
  for (const lay of plan.hoseLays ?? []) if (isCounted(lay)) for (const id of lay.pumperIds) add(id, findApparatus(docs, id)?.stationId, lay.id, 'full')
  for (const task of plan.tenders) {
    const { dumpSiteId } = sitesOfTask(docs, task)
    add(task.tenderId, findApparatus(docs, task.tenderId)?.stationId, dumpSiteId, 'full')
    for (const pair of sitePairs(docs, task)) {
      add(task.tenderId, pair.dumpSiteId, pair.fillSiteId, 'empty')
      add(task.tenderId, pair.fillSiteId, pair.dumpSiteId, 'full')
    }
  }
  return uses
}

const viaOf = (note: LegNote | undefined): Point[] => note?.via ?? []

function legAsk(unit: Apparatus, from: Point, to: Point, load: Load, via: Point[]): LegAsk {
  const gross_lb = load === 'full' ? unit.full_lb : (unit.empty_lb ?? unit.full_lb)
  return {
    from, to, via,
    ...(gross_lb !== undefined && { gross_lb }),
    ...(unit.height_ft !== undefined && { height_ft: unit.height_ft }),
    ...(unit.width_ft !== undefined && { width_ft: unit.width_ft }),
  }
}

/** The officer's note on a way: for this vehicle before one for any. */
export function findLegNote({ plan }: Pick<Docs, 'plan'>, fromId: string, toId: string, apparatusId: string): LegNote | undefined {
  const notes = plan.legNotes.filter((note) => note.fromId === fromId && note.toId === toId)
  return notes.find((note) => note.apparatusId === apparatusId) ?? notes.find((note) => note.apparatusId === undefined)
}

/**
 * Key of a way: what was asked, on which road data, under which road notes. A leg under another
 * key is stale and is never used. This is its first part, the other the same for every way of a district.
 */
const askKey = (ask: LegAsk): string => [
  placeKey(ask.from), ask.via.length > 0 ? shortHash(ask.via.map(placeKey).join(';')) : '', placeKey(ask.to),
  ask.gross_lb ?? '', ask.height_ft ?? '', ask.width_ft ?? '',
].join('>')

function roadsKey({ district }: Docs): string {
  const notes = district.roadNotes.map(({ point, closed, maxWeight_lb, maxHeight_ft, maxWidth_ft, speed_mph, oneWay }) =>
    [placeKey(point), closed, maxWeight_lb, maxHeight_ft, maxWidth_ft, speed_mph, oneWay].join(' '))
  return [district.roads?.hash.slice(0, 16) ?? '', notes.length > 0 ? shortHash(notes.sort().join('|')) : ''].join('>')
}

const placeKey = ({ lat, lon }: Point): string => `${lat.toFixed(6)},${lon.toFixed(6)}`

/**
 * Finds every way the plan drives that is not already in the bundle.
 *
 * @param find the road network's answer to one ask; the only step that needs it
 * @returns legs for the bundle, found and not, each key once; stale ones are dropped
 */
export function resolveLegs(bundle: Bundle, find: (ask: LegAsk) => Omit<Leg, 'key' | 'by'> | Issue): { legs: (Leg | NoLeg)[]; issues: Issue[] } {
  const known = new Map(bundle.legs.map((leg) => [leg.key, leg]))
  const legs = new Map<string, Leg | NoLeg>()
  const issues: Issue[] = []
  for (const use of legUses(bundle)) {
    if (legs.has(use.key)) continue
    const old = known.get(use.key)
    if (old) {
      legs.set(use.key, old)
      continue
    }
    const found = find(use.ask)
    if ('code' in found) {
      legs.set(use.key, { key: use.key, by: 'none', code: found.code, values: found.values })
      issues.push({ ...found, subjectIds: [use.apparatusId, use.fromId, use.toId] })
    } else legs.set(use.key, { key: use.key, by: 'routed', ...found })
  }
  return { legs: [...legs.values()], issues }
}

/** A way as it is used in the answer. */
export type Way = {
  by: Leg['by']
  distance_mi: number
  travel_s: number
  key: string
  /** True when the distance is a straight line times the road factor. */
  isStraight: boolean
  cautions: NonNullable<Leg['cautions']>
}

/**
 * The best-known figure for one way: a measured time, else the roads', else the handbook's
 * formula on a distance the officer gave, else on a straight line times the road factor.
 *
 * @returns the way, or an issue when the roads have none for this vehicle
 */
export function wayOf(bundle: Bundle, use: LegUse): Way | Issue {
  const note = findLegNote(bundle, use.fromId, use.toId, use.apparatusId)
  const leg = bundle.legs.find(({ key }) => key === use.key)
  const straight_mi = milesFromMetres(distanceM(use.ask.from, use.ask.to)) * (bundle.district.roadFactor ?? defaults.roadFactor.value)
  const given_mi = note?.distance_mi ?? findLegNote(bundle, use.toId, use.fromId, use.apparatusId)?.distance_mi
  const average_mph = note?.average_mph ?? bundle.district.average_mph ?? defaults.average_mph.value
  const routed = leg && leg.by !== 'none' ? leg : undefined
  const cautions = routed?.cautions ?? []
  if (note?.travel_s !== undefined)
    return { by: 'measured', key: use.key, travel_s: note.travel_s, distance_mi: given_mi ?? routed?.distance_mi ?? straight_mi, isStraight: given_mi === undefined && !routed, cautions }
  if (given_mi !== undefined)
    return { by: 'handbook', key: use.key, distance_mi: given_mi, travel_s: handbookTravel_s(given_mi, average_mph), isStraight: false, cautions }
  if (leg?.by === 'none') return issue(leg.code, 'block', [use.apparatusId, use.fromId, use.toId], leg.values)
  if (routed) return { by: routed.by, key: use.key, distance_mi: routed.distance_mi, travel_s: routed.travel_s, isStraight: false, cautions }
  return { by: 'handbook', key: use.key, distance_mi: straight_mi, travel_s: handbookTravel_s(straight_mi, average_mph), isStraight: true, cautions }
}
