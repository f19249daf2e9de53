import { issue, type Issue } from '../issue'
import { findApparatus, type Apparatus, type Bundle, type DumpSite, type FillSite } from '../plan'
import { arrival } from './arrival'
import { crewDefaults } from './defaults'
import { startLedger, take, type Ledger } from './ledger'
import type { ResolvedTender } from './tender'
import type { Ways } from './ways'

/**
 * People a place needs beside drivers and pump operators: the first bay or position, and each further one.
 * Assumed; common practice, no source.
 */
export const FIRST_PLACE_CREW_COUNT = 3
export const NEXT_PLACE_CREW_COUNT = 1
/** Of the first-due engine's crew: an officer and two on the first line. */
export const FIRST_LINE_CREW_COUNT = 3
/** Supply officer, and two for traffic. */
export const COMMAND_CREW_COUNT = 3

/** When the people of each place of a site are there, first place first; shorter than the site's places where there are too few. */
export type Staffed = { readonly placeAt_s: readonly number[] }

export type Staffing = {
  /** By site id; no entry: nobody counted. */
  readonly sites: ReadonlyMap<string, Staffed>
  readonly issues: readonly Issue[]
}

type Arriving = { at_s: number; count: number }

/**
 * Who stands where, from the crews that come: a pumper's operator stays at its pump and a tender's driver in his seat, the
 * others of a site's own pumper staff that site. Of tenders, those who ride along get off at the dump site first; who is left over rides
 * on to the fill site and then helps with traffic. Of the first-due engine's crew an officer and two are on the first line.
 *
 * Nothing is counted unless the crew of some vehicle in the plan is known; then unknown crews are taken from `crewDefaults`.
 * Nobody counted means nobody waited for: the answer is then as without people.
 *
 * @returns places by time; issue `staff-short` (warn) for each site, and for the plan, that has too few
 */
export function staffingOf(bundle: Bundle, ledger: Ledger, ways: Ways, tenders: readonly ResolvedTender[]): Staffing {
  const { plan } = bundle
  const sites = new Map<string, Staffed>()
  const issues: Issue[] = []
  const pumpers = [...plan.fillSites, ...plan.dumpSites].flatMap(({ pumperId }) => findApparatus(bundle, pumperId) ?? [])
  const firstDue = findApparatus(bundle, plan.firstDueId)
  const all: Apparatus[] = [...pumpers, ...tenders.map(({ tender }) => tender), ...(firstDue ? [firstDue] : [])]
  if (!all.some(({ crewCount }) => crewCount !== undefined)) return { sites, issues }

  const riders = new Map<string, Arriving[]>()
  for (const { tender, dumpSiteId, spec } of tenders) {
    const count = crewCount(ledger, tender) - 1
    if (count > 0) riders.set(dumpSiteId, [...(riders.get(dumpSiteId) ?? []), { at_s: spec.arrive_s ?? Infinity, count }])
  }
  const left: Arriving[] = []
  for (const site of plan.dumpSites) {
    const here = [...ownCrew(bundle, ledger, ways, site), ...(riders.get(site.id) ?? [])].sort((a, b) => a.at_s - b.at_s)
    const { staffed, rest } = staff(here, site.positionCount ?? 1)
    left.push(...rest)
    note(site, staffed, site.positionCount ?? 1, here)
  }
  for (const site of plan.fillSites) {
    const ride_s = Math.min(...tenders.filter(({ fillSiteId }) => fillSiteId === site.id).map(({ spec }) => spec.toFill_s))
    const more = Number.isFinite(ride_s) ? left.splice(0).map(({ at_s, count }) => ({ at_s: at_s + ride_s, count })) : []
    const here = [...ownCrew(bundle, ledger, ways, site), ...more].sort((a, b) => a.at_s - b.at_s)
    const { staffed, rest } = staff(here, site.bayCount ?? 1)
    left.push(...rest)
    note(site, staffed, site.bayCount ?? 1, here)
  }
  const spare = left.reduce((sum, { count }) => sum + count, 0)
  if (spare < COMMAND_CREW_COUNT) issues.push(issue('staff-short-command', 'warn', [plan.id], { needCount: COMMAND_CREW_COUNT, haveCount: spare }))
  return { sites, issues }

  function note(site: FillSite | DumpSite, staffed: Staffed, placeCount: number, here: readonly Arriving[]): void {
    sites.set(site.id, staffed)
    if (staffed.placeAt_s.length >= placeCount) return
    const needCount = FIRST_PLACE_CREW_COUNT + (placeCount - 1) * NEXT_PLACE_CREW_COUNT
    const haveCount = here.reduce((sum, { count }) => sum + count, 0)
    issues.push(issue('staff-short', 'warn', [site.id], { needCount, haveCount, openCount: Math.max(1, staffed.placeAt_s.length), placeCount }))
  }
}

function crewCount(ledger: Ledger, unit: Apparatus): number {
  return take(ledger, unit, 'crewCount', unit.crewCount, crewDefaults[unit.kind])
}

/** Those of the site's own pumper who do not work its pump. */
function ownCrew(bundle: Bundle, ledger: Ledger, ways: Ways, site: FillSite | DumpSite): Arriving[] {
  const unit = findApparatus(bundle, site.pumperId)
  if (!unit) return []
  const reached = arrival(bundle, startLedger(), ways, unit, site.id)
  const count = crewCount(ledger, unit) - 1 - (unit.id === bundle.plan.firstDueId ? FIRST_LINE_CREW_COUNT : 0)
  return 'code' in reached || count <= 0 ? [] : [{ at_s: reached.arrive_s, count }]
}

/** Fills the places of a site one after the other with those who come, and says who is left. */
function staff(here: readonly Arriving[], placeCount: number): { staffed: Staffed; rest: Arriving[] } {
  const placeAt_s: number[] = []
  let missing = FIRST_PLACE_CREW_COUNT
  const rest: Arriving[] = []
  for (const { at_s, count } of here) {
    let free = count
    while (placeAt_s.length < placeCount && free >= missing) {
      free -= missing
      placeAt_s.push(at_s)
      missing = NEXT_PLACE_CREW_COUNT
    }
    if (placeAt_s.length < placeCount) missing -= free
    else if (free > 0) rest.push({ at_s, count: free })
  }
  // Too few for even one place: it opens with the last who come, and the issue says so.
  if (placeAt_s.length === 0) {
    const last = here.at(-1)
    return { staffed: { placeAt_s: last ? [last.at_s] : [] }, rest }
  }
  return { staffed: { placeAt_s }, rest }
}
