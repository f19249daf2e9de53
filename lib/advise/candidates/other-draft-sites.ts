import { distanceM, type Point } from '../../geo'
import { findDraftingPump, type Bundle, type DraftingPump, type EditBody, type FillSite, type Suction } from '../../plan'
import type { Candidate, Proviso } from '../candidate'
import { assumedEffort, crewOf } from '../effort'
import { freshId } from './fresh-id'
import { outfitProvisos, suctionsOf, unusedPumps } from './other-pumpers'

/** Places looked at: the nearest to the dump site, as the crow flies. */
const MOST_PLACES = 6
const MOST_PUMPS = 2

/** A place where tenders could fill: a draft site, or a hydrant that was tested. */
type FillPlace = { readonly id: string; readonly name: string; readonly point: Point; readonly draftSiteId?: string; readonly sourceId?: string; readonly run_ft?: number; readonly isSoft: boolean }

/** The draft sites and tested hydrants of the district that the plan does not use, nearest to its first dump site first. */
function otherFillPlaces({ district, plan }: Bundle): FillPlace[] {
  const used = new Set<string | undefined>(plan.fillSites.flatMap(({ draftSiteId, sourceId }) => [draftSiteId as string | undefined, ...(draftSiteId ? [] : [sourceId as string | undefined])]))
  const dump = plan.dumpSites[0]
  if (!dump) return []
  const banks = district.draftSites.map((site): FillPlace => ({
    id: site.id, name: site.name, point: site.point, draftSiteId: site.id, isSoft: site.ground === 'soft',
    ...(site.sourceId && { sourceId: site.sourceId }), ...(site.hoseRun_ft !== undefined && { run_ft: site.hoseRun_ft }),
  }))
  const hydrants = district.sources.flatMap((source): FillPlace[] =>
    source.kind === 'pressureHydrant' && source.test_gpm !== undefined ? [{ id: source.id, name: source.name, point: source.point, sourceId: source.id, isSoft: false }] : [])
  return [...banks, ...hydrants]
    .filter(({ id }) => !used.has(id))
    .map((place) => ({ place, away_m: distanceM(place.point, dump.point) }))
    .sort((a, b) => a.away_m - b.away_m || (a.place.id < b.place.id ? -1 : 1))
    .slice(0, MOST_PLACES)
    .map(({ place }) => place)
}

/**
 * Each fill site moved to another draft site; a second fill site there, with a pumper that is free and half of the tenders, or all of them choosing.
 */
export function otherDraftSites(bundle: Bundle): Candidate[] {
  const places = otherFillPlaces(bundle)
  const free = unusedPumps(bundle).filter(({ kind }) => kind === 'pumper').slice(0, MOST_PUMPS)
  return [
    ...bundle.plan.fillSites.flatMap((site) => places.flatMap((place) => moved(bundle, site, place))),
    ...places.flatMap((place) => free.flatMap((pump) => second(bundle, place, pump))),
  ]
}

/** The site as it would be there: nothing that was measured or noted at the old place goes with it. */
function siteAt(base: FillSite, place: FillPlace): FillSite {
  const { lift_ft: _lift, rate_gpm: _rate, setUp_s: _setUp, evidence: _evidence, draftSiteId: _draft, sourceId: _source, fillLineRise_ft: _rise, ...rest } = base
  return {
    ...rest, name: place.name, point: place.point,
    ...(place.draftSiteId && { draftSiteId: place.draftSiteId }), ...(place.sourceId && { sourceId: place.sourceId }),
    ...(rest.suction && { suction: { ...rest.suction, length_ft: place.run_ft ?? rest.suction.length_ft } }),
  }
}

const provisosAt = (bundle: Bundle, place: FillPlace, site: FillSite, pump: DraftingPump, suction: Suction | undefined): Proviso[] =>
  [...(place.isSoft ? (['soft-ground'] as const) : []), ...outfitProvisos(bundle, site, pump, suction)]

function moved(bundle: Bundle, base: FillSite, place: FillPlace): Candidate[] {
  const pump = findDraftingPump(bundle, base.pumperId)
  if (!pump?.rated_gpm) return []
  const there = siteAt(base, place)
  const gone = Object.fromEntries(['lift_ft', 'rate_gpm', 'setUp_s', 'fillLineRise_ft', 'draftSiteId', 'sourceId'].map((field) => [field, null]))
  const goneEvidence = base.evidence && Object.fromEntries(Object.keys(base.evidence).map((field) => [field, null]))
  // What was noted of ways to the old place is not true of the new one.
  const notes = bundle.plan.legNotes.filter(({ fromId, toId }) => fromId === base.id || toId === base.id)
  const lanes = (bundle.plan.oneLanes ?? []).filter(({ fillSiteId }) => fillSiteId === base.id)
  return suctionsOf(bundle, there, pump).map((suction): Candidate => {
    const { id: _id, ...fields } = { ...there, ...(suction && { suction }) }
    const edits: EditBody[] = [
      ...notes.map(({ id }): EditBody => ({ kind: 'removeItem', collection: 'legNotes', id })),
      ...lanes.map(({ id }): EditBody => ({ kind: 'removeItem', collection: 'oneLanes', id })),
      { kind: 'setFields', collection: 'fillSites', id: base.id, set: { ...gone, ...fields }, ...(goneEvidence && { evidence: goneEvidence }) },
    ]
    return {
      id: `otherDraftSite:${base.id}:${place.id}:${suction?.size_in ?? ''}x${suction?.lineCount ?? ''}`, group: `otherDraftSite:${base.id}:${place.id}`, kind: 'otherDraftSite',
      subjectIds: [place.id, base.id], values: {}, edits, effort: { ...assumedEffort.otherDraftSite, apparatusCount: 0 },
      provisos: [...provisosAt(bundle, place, there, pump, suction), ...(notes.length + lanes.length > 0 ? (['way-unmeasured'] as const) : [])],
    }
  })
}

function second(bundle: Bundle, place: FillPlace, pump: DraftingPump): Candidate[] {
  const { plan, district } = bundle
  if (plan.tenders.length < 2 || plan.fillSites.length >= 40) return []
  const site = siteAt({ id: freshId(bundle, `fill-${place.id}`), name: place.name, point: place.point, pumperId: pump.id, bayCount: 1 }, place)
  const tank_gal = (tenderId: string) => district.apparatus.find(({ id }) => id === tenderId)?.tank_gal ?? 0
  const bySize = plan.tenders.toSorted((a, b) => tank_gal(b.tenderId) - tank_gal(a.tenderId) || (a.id < b.id ? -1 : 1))
  const suctions = suctionsOf(bundle, site, pump)
  // Every second tender by size goes there, from the first or from the next; or each goes where it is back first.
  const splits: { key: string; ids: string[]; fields: Record<string, unknown> }[] = [
    ...[0, 1].map((first) => ({ key: String(first), ids: bySize.filter((_, index) => index % 2 === first).map(({ id }) => id), fields: { fillSiteId: site.id } })),
    { key: 'choose', ids: bySize.map(({ id }) => id), fields: { choosesFill: true } },
  ]
  return splits.flatMap(({ key, ids, fields }) => suctions.map((suction): Candidate => ({
    id: `secondFillSite:${place.id}:${pump.id}:${key}:${suction?.size_in ?? ''}x${suction?.lineCount ?? ''}`, group: `secondFillSite:${place.id}`, kind: 'secondFillSite',
    subjectIds: [place.id, pump.id],
    values: { count: key === 'choose' ? 0 : ids.length },
    edits: [
      { kind: 'addItem', collection: 'fillSites', item: { ...site, ...(suction && { suction }) } },
      ...ids.map((id): EditBody => ({ kind: 'setFields', collection: 'tenders', id, set: fields })),
    ],
    effort: { ...assumedEffort.secondFillSite, peopleCount: Math.max(assumedEffort.secondFillSite.peopleCount, crewOf(pump)), apparatusCount: 1 },
    comes: { apparatusId: pump.id, toId: site.id },
    provisos: provisosAt(bundle, place, site, pump, suction),
  })))
}
