import type { Bundle, DumpSite, EditBody } from '../../plan'
import type { Candidate } from '../candidate'
import { assumedEffort } from '../effort'
import { siphonProviso } from './more-tenders'

const MOST_POSITIONS = 12
const MOST_TANKS = 12

/** At each dump site: one more position, one more portable tank that is at hand, tenders driving through. */
export function dumpSiteChanges(bundle: Bundle): Candidate[] {
  return bundle.plan.dumpSites.flatMap((site) => [...morePositions(site), ...driveThrough(bundle, site), ...moreTanks(bundle, site)])
}

const set = (site: DumpSite, fields: Record<string, unknown>): EditBody => ({ kind: 'setFields', collection: 'dumpSites', id: site.id, set: fields })

function morePositions(site: DumpSite): Candidate[] {
  const positionCount = (site.positionCount ?? 1) + 1
  if (positionCount > MOST_POSITIONS) return []
  return [{
    id: `dumpPosition:${site.id}`, group: `dumpPosition:${site.id}`, kind: 'dumpPosition', subjectIds: [site.id], values: { positionCount },
    edits: [set(site, { positionCount })], effort: { ...assumedEffort.dumpPosition, apparatusCount: 0 }, provisos: ['room-at-dump'],
  }]
}

function driveThrough({ plan, district }: Bundle, site: DumpSite): Candidate[] {
  if (site.manner === 'driveThrough') return []
  const hasMeasured = plan.tenders.some(({ tenderId, dumpSiteId }) => {
    const unit = district.apparatus.find(({ id }) => id === tenderId)
    return (dumpSiteId ?? plan.dumpSites[0]?.id) === site.id && unit?.kind === 'tender' && unit.dumpPosition_s !== undefined
  })
  return [{
    id: `driveThrough:${site.id}`, group: `driveThrough:${site.id}`, kind: 'driveThrough', subjectIds: [site.id], values: {},
    edits: [set(site, { manner: 'driveThrough' })], effort: { ...assumedEffort.driveThrough, apparatusCount: 0 },
    provisos: ['drive-through-room', ...(hasMeasured ? (['handling-measured'] as const) : [])],
  }]
}

/** Tanks that come with what the plan sends, or that lie at a station; those of other apparatus come with it (`moreTenders`). */
function moreTanks(bundle: Bundle, site: DumpSite): Candidate[] {
  const { plan, district } = bundle
  const there = site.portableTankIds ?? []
  // Where the plan names no tank but a volume, naming one would take that volume away.
  if (there.length === 0 || there.length >= MOST_TANKS || site.nurseId) return []
  const standing = new Set(plan.dumpSites.flatMap(({ portableTankIds }) => (portableTankIds ?? []) as string[]))
  const sent = new Set<string | undefined>([
    ...plan.tenders.map(({ tenderId }) => tenderId as string), ...[...plan.fillSites, ...plan.dumpSites].map(({ pumperId }) => pumperId as string | undefined), plan.firstDueId,
  ])
  return district.equipment.flatMap((item): Candidate[] => {
    if (item.kind !== 'portableTank' || standing.has(item.id) || (item.carriedBy !== undefined && !sent.has(item.carriedBy))) return []
    return [{
      id: `portableTank:${site.id}:${item.id}`, group: `portableTank:${site.id}:${item.id}`, kind: 'portableTank',
      subjectIds: [item.id, site.id, ...(item.carriedBy ? [item.carriedBy] : [])], values: { capacity_gal: item.capacity_gal },
      edits: [set(site, { portableTankIds: [...there, item.id] })],
      effort: { ...assumedEffort.portableTank, apparatusCount: 0 },
      provisos: [item.carriedBy === undefined ? 'tank-not-carried' : 'tank-carrier', ...siphonProviso(bundle)],
    }]
  })
}
