import { issue, type Issue } from '../issue'
import { findApparatus, type Apparatus, type Bundle, type DumpSite, type FillSite, type Lay } from '../plan'
import { arrival } from './arrival'
import { crewDefaults, defaults } from './defaults'
import type { ResolvedLay } from './hose-lay/resolve-lays'
import { startLedger, take, type Ledger } from './ledger'
import type { ResolvedTender } from './tender'
import type { Ways } from './ways'

/**
 * People a place needs beside drivers and pump operators: the first bay or position, and each further one.
 * Assumed; common practice, no source.
 */
const FIRST_PLACE_CREW_COUNT = 3
const NEXT_PLACE_CREW_COUNT = 1
/** People a site with so many bays or positions needs. */
export const crewNeeded = (placeCount: number): number => FIRST_PLACE_CREW_COUNT + (placeCount - 1) * NEXT_PLACE_CREW_COUNT
/** Of the first-due engine's crew: an officer and two on the first line. */
const FIRST_LINE_CREW_COUNT = 3
/** Supply officer, and two for traffic. */
export const COMMAND_CREW_COUNT = 3

/** When the people of each place of a site are there, first place first; shorter than the site's places where there are too few. */
export type Staffed = { readonly placeAt_s: readonly number[] }

export type Staffing = {
  /** By site id; no entry: nobody counted. */
  readonly sites: ReadonlyMap<string, Staffed>
  /** By hose lay: when those who lay it are there, or the last who come; no entry: nobody counted. */
  readonly lays: ReadonlyMap<string, number>
  readonly issues: readonly Issue[]
}

type Arriving = { at_s: number; count: number }

/**
 * Who stands where, from the crews that come: a pumper's operator stays at its pump and a tender's driver in his seat, the
 * others of a site's own pumper staff that site. Of tenders, those who ride along get off at the dump site first; who is left over rides
 * on to the fill site and then helps with traffic. A hose lay is laid by those of its own pumpers, then by those whom the sites can spare,
 * from when they are free there; how they get to the lay is not reckoned. Of the first-due engine's crew an officer and two are on the first line.
 *
 * Nothing is counted unless the crew of some vehicle in the plan is known; then unknown crews are taken from `crewDefaults`.
 * Nobody counted means nobody waited for: the answer is then as without people.
 *
 * @param lays that count
 * @returns places by time, and when each lay has its people; issues `staff-short` for each site, `staff-short-lay` for each lay and
 *   `staff-short-command` for the plan that has too few (warn)
 */
export function staffingOf(bundle: Bundle, ledger: Ledger, ways: Ways, tenders: readonly ResolvedTender[], lays: readonly ResolvedLay[] = []): Staffing {
  const { plan } = bundle
  const sites = new Map<string, Staffed>()
  const layCrewAt_s = new Map<string, number>()
  const issues: Issue[] = []
  const standing = [...[...plan.fillSites, ...plan.dumpSites].map(({ pumperId }) => pumperId), ...lays.flatMap(({ pumperIds }) => pumperIds)]
  const pumpers = standing.flatMap((id) => findApparatus(bundle, id) ?? [])
  const firstDue = findApparatus(bundle, plan.firstDueId)
  const all: Apparatus[] = [...pumpers, ...tenders.map(({ tender }) => tender), ...(firstDue ? [firstDue] : [])]
  if (!all.some(({ crewCount }) => crewCount !== undefined)) return { sites, lays: layCrewAt_s, issues }

  const riders = new Map<string, Arriving[]>()
  for (const { tender, dumpSiteId, spec } of tenders) {
    const count = crewCount(ledger, tender) - 1
    if (count > 0) riders.set(dumpSiteId, [...(riders.get(dumpSiteId) ?? []), { at_s: spec.arrive_s ?? Infinity, count }])
  }
  const left: Arriving[] = []
  for (const site of plan.dumpSites) {
    const here = [...ownCrew(bundle, ledger, ways, site), ...(riders.get(site.id) ?? [])].sort(byTime)
    const { staffed, rest } = staff(here, site.positionCount ?? 1)
    left.push(...rest)
    note(site, staffed, site.positionCount ?? 1, here)
  }
  for (const site of plan.fillSites) {
    const ride_s = Math.min(...tenders.filter(({ fillSiteId }) => fillSiteId === site.id).map(({ spec }) => spec.toFill_s))
    const more = Number.isFinite(ride_s) ? left.splice(0).map(({ at_s, count }) => ({ at_s: at_s + ride_s, count })) : []
    const here = [...ownCrew(bundle, ledger, ways, site), ...more].sort(byTime)
    const { staffed, rest } = staff(here, site.bayCount ?? 1)
    left.push(...rest)
    note(site, staffed, site.bayCount ?? 1, here)
  }
  for (const { lay, pumperIds } of lays) {
    const own = pumperIds.flatMap((id) => crewOf(bundle, ledger, ways, id, lay.id))
    const { at_s, rest, haveCount } = gather([...own.sort(byTime), ...left.splice(0).sort(byTime)], layCrew(lay))
    left.push(...rest)
    if (at_s !== undefined) layCrewAt_s.set(lay.id, at_s)
    if (haveCount < layCrew(lay)) issues.push(issue('staff-short-lay', 'warn', [lay.id], { needCount: layCrew(lay), haveCount }))
  }
  const spare = left.reduce((sum, { count }) => sum + count, 0)
  if (spare < COMMAND_CREW_COUNT) issues.push(issue('staff-short-command', 'warn', [plan.id], { needCount: COMMAND_CREW_COUNT, haveCount: spare }))
  return { sites, lays: layCrewAt_s, issues }

  function note(site: FillSite | DumpSite, staffed: Staffed, placeCount: number, here: readonly Arriving[]): void {
    sites.set(site.id, staffed)
    if (staffed.placeAt_s.length >= placeCount) return
    const needCount = crewNeeded(placeCount)
    const haveCount = here.reduce((sum, { count }) => sum + count, 0)
    issues.push(issue('staff-short', 'warn', [site.id], { needCount, haveCount, openCount: Math.max(1, staffed.placeAt_s.length), placeCount }))
  }
}

function crewCount(ledger: Ledger, unit: Apparatus): number {
  return take(ledger, unit, 'crewCount', unit.crewCount, crewDefaults[unit.kind])
}

const byTime = (a: Arriving, b: Arriving): number => a.at_s - b.at_s

/** People who lay a hose lay, beside one operator a pumper. */
const layCrew = ({ crewCount: entered }: Lay): number => entered ?? defaults.layCrewCount.value

/** Those of the site's own pumper who do not work its pump. */
const ownCrew = (bundle: Bundle, ledger: Ledger, ways: Ways, site: FillSite | DumpSite): Arriving[] => crewOf(bundle, ledger, ways, site.pumperId, site.id)

/** Those who come on a pumper and do not work its pump. */
function crewOf(bundle: Bundle, ledger: Ledger, ways: Ways, pumperId: string | undefined, placeId: string): Arriving[] {
  const unit = findApparatus(bundle, pumperId)
  if (!unit) return []
  const reached = arrival(bundle, startLedger(), ways, unit, placeId)
  const count = crewCount(ledger, unit) - 1 - (unit.id === bundle.plan.firstDueId ? FIRST_LINE_CREW_COUNT : 0)
  return 'code' in reached || count <= 0 ? [] : [{ at_s: reached.arrive_s, count }]
}

/** Takes as many as are needed, in the order given; `at_s`: when the last of them is there, absent where nobody comes. */
function gather(people: readonly Arriving[], needCount: number): { at_s: number | undefined; rest: Arriving[]; haveCount: number } {
  let missing = needCount
  let at_s: number | undefined
  const rest: Arriving[] = []
  for (const one of people) {
    if (one.at_s === Infinity) continue
    const taken = Math.min(missing, one.count)
    missing -= taken
    if (taken > 0) at_s = Math.max(at_s ?? 0, one.at_s)
    if (one.count > taken) rest.push({ at_s: one.at_s, count: one.count - taken })
  }
  return { at_s, rest, haveCount: needCount - missing }
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
