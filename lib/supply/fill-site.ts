import { assumedInletCoefficient, draftCapacity, draftSupply, fillRates, type DraftCapacity, type FillCase } from '../hydraulics'
import { issue, type Issue } from '../issue'
import { findDraftingPump, findDraftSite, findSource, type Bundle, type DraftingPump, type FillSite, type Source, type Tender } from '../plan'
import { arrival } from './arrival'
import { defaults } from './defaults'
import { suctionNotCarried } from './stock'
import { draftPlace, liftIssues, liftOf, pumpAbility, pumperHydraulics, suctionSetup, type ResolvedLift } from './drafting'
import { take, takeKnown, type Ledger } from './ledger'
import { coefficientOfSize } from './hose-lay/lay-hose'
import type { ResolvedLay } from './hose-lay/resolve-lays'
import { sourceOfLay } from './hose-lay/source-of-lay'
import { linesInto } from './lines-into'
import { drawsOnNamed } from './names-water'
import type { FillSiteResult } from './result'
import { seasonDrop } from './season'
import type { Staffed } from './staffing'
import { doubtedWater, sourceWater, type SourceWater } from './source'
import type { Ways } from './ways'

/** A fill site as the shuttle sees it, and what stands behind its rates. */
export type ResolvedFillSite = {
  readonly site: FillSite
  readonly source?: Source
  readonly pump?: DraftingPump
  readonly water: SourceWater
  readonly ready_s: number
  readonly bayRate_gpm: readonly number[]
  /** Later than the first, where people come one after the other. */
  readonly bayAfter_s?: readonly number[]
  /** Bays that flow at once, where the others wait hooked up. */
  readonly flowingBayCount?: number
  readonly lift?: ResolvedLift
  readonly draft?: DraftCapacity
  readonly fillCase?: FillCase
  readonly limit: FillSiteResult['fillLimit']
  readonly draftLimit: FillSiteResult['draftLimit']
  readonly issues: readonly Issue[]
}

/**
 * What a fill site gives: the pumper's draft there, through its hose, into the tenders that come.
 * Bays share one pump; the rates are those of the weakest inlet among the tenders assigned.
 *
 * @param tenders those that fill here
 * @param staffed when the people of each bay are there; absent: nobody is counted
 * @param own     the hose lay that is its whole supply, where no pumper stands here
 */
export function resolveFillSite(bundle: Bundle, ledger: Ledger, ways: Ways, site: FillSite, tenders: readonly Tender[], staffed?: Staffed, own?: ResolvedLay): ResolvedFillSite {
  if (own) return fedSite(bundle, site, tenders, staffed, own)
  const draftSite = findDraftSite(bundle, site.draftSiteId)
  const source = findSource(bundle, site.sourceId ?? draftSite?.sourceId)
  const drop = seasonDrop(source, bundle.plan.season)
  const water = doubtedWater(ledger, source, sourceWater(source, drop))
  const pump = findDraftingPump(bundle, site.pumperId)
  const bayCount = placesOpen(site.bayCount ?? 1, staffed)
  const issues: Issue[] = [...drop.issues, ...water.issues]

  const reached = pump ? arrival(bundle, ledger, ways, pump, site.id) : { arrive_s: 0, issues: [] }
  const cannotReach = 'code' in reached
  if (cannotReach) issues.push({ ...reached, severity: 'block' })
  else issues.push(...reached.issues)
  const ready_s = Math.max(cannotReach ? 0 : reached.arrive_s, staffed?.placeAt_s[0] ?? 0) + take(ledger, site, 'setUp_s', site.setUp_s, defaults.fillSetUp_s)
  const shared = { site, source, pump, water, ready_s, ...laterPlaces('bayAfter_s', bayCount, ready_s, staffed), ...(site.bayOrder === 'oneAtATime' && bayCount > 1 && { flowingBayCount: 1 }) }

  if (!drawsOnNamed(bundle, site)) issues.push(issue('fill-water-unnamed', 'warn', [site.id]))
  if (source?.kind === 'pressureHydrant' && water.hydrant_gpm === undefined) issues.push(issue('hydrant-untested', 'warn', [source.id]))
  if (!pump?.rated_gpm && site.rate_gpm === undefined) issues.push(issue('fill-site-without-pumper', 'block', [site.id]))
  if (!pump?.rated_gpm) {
    const measured_gpm = take(ledger, site, 'rate_gpm', site.rate_gpm, defaults.tenderFillLimit_gpm)
    // A hydrant needs none; elsewhere somebody has to draft, and nobody is known to come.
    if (!pump && source?.kind !== 'pressureHydrant') issues.push(issue('fill-pumper-assumed', 'warn', [site.id], { rate_gpm: measured_gpm }))
    return { ...shared, bayRate_gpm: bays(bayCount, (busy) => measured_gpm / busy), limit: 'measured', draftLimit: 'measured', issues }
  }

  const isHydrant = source?.kind === 'pressureHydrant' && water.hydrant_gpm !== undefined
  const lift = isHydrant ? undefined : liftOf(ledger, site, draftSite, source, drop)
  const lift_ft = lift?.lift_ft ?? 0
  if (lift) issues.push(...liftIssues(lift, site.id))
  const ask = { pumper: pumperHydraulics(pump), suction: suctionSetup(ledger, site, draftSite, pump), place: draftPlace(ledger, bundle.district, lift_ft, source?.water_degF) }
  const bare = isHydrant ? undefined : suctionNotCarried(bundle, pump, ask.suction, source, site.id)
  if (bare) issues.push(bare)
  const maxDischarge_psi = site.discharge_psi ?? take(ledger, pump, 'discharge_psi', pump.discharge_psi, defaults.discharge_psi)
  const ability = pumpAbility(ledger, pump)
  const drafted = draftSupply(ask)
  const supplyFlow_gpm = isHydrant ? () => Math.min(water.hydrant_gpm ?? 0, pump.rated_gpm ?? 0) : (discharge_psi: number) => drafted(discharge_psi) * ability
  const size_in = site.fillLine?.size_in ?? take(ledger, site, 'fillLineSize_in', undefined, defaults.fillLineSize_in)
  const bay = {
    lay: {
      size_in, coefficient: coefficientOfSize(bundle.district, size_in).coefficient,
      length_ft: site.fillLine?.length_ft ?? take(ledger, site, 'fillLineLength_ft', undefined, defaults.fillLineLength_ft),
      lineCount: site.fillLine?.lineCount ?? 1,
      rise_ft: site.fillLineRise_ft ?? 0,
    },
    inletCoefficient: Math.min(...(tenders.length === 0 ? [{}] : tenders).map((tender: Pick<Tender, 'fillInlet_in' | 'fillInletCount'>) =>
      linesInto(site, tender) * assumedInletCoefficient(tender.fillInlet_in ?? defaults.fillInlet_in.value))),
    maxInlet_psi: Math.min(...tenders.map(({ fillInletMaximum_psi }) => fillInletMaximum_psi ?? defaults.fillInletMaximum_psi.value), ...(tenders.length === 0 ? [defaults.fillInletMaximum_psi.value] : [])),
    fillLimit_gpm: Math.max(...tenders.map(({ fillLimit_gpm }) => fillLimit_gpm ?? defaults.tenderFillLimit_gpm.value), ...(tenders.length === 0 ? [defaults.tenderFillLimit_gpm.value] : [])),
  }
  const rates = fillRates({ supplyFlow_gpm, maxDischarge_psi, bays: bays(bayCount, () => bay) })
  const busiest = rates.cases[rates.cases.length - 1]
  const draft = isHydrant ? undefined : draftCapacity({ ...ask, ask: { discharge_psi: busiest?.pumpPressure_psi ?? maxDischarge_psi } })
  const about = (problem: Issue): Issue => ({ ...problem, subjectIds: [site.id, pump.id] })
  const limit = limitOf(busiest)
  // What may be less counts as a warning where the fill lives on it.
  const weighed = (problem: Issue): Issue => (problem.code === 'rated-hose-assumed' && limit === 'draft' ? { ...problem, severity: 'warn' } : problem)
  if (draft) issues.push(...draft.issues.filter(({ code }) => code !== 'net-pressure-beyond-curve').map(about).map(weighed))
  issues.push(...rates.issues.filter(({ code }) => code !== 'no-fill-flow').map(about))

  const measured_gpm = site.rate_gpm === undefined ? undefined : takeKnown(ledger, site, 'rate_gpm', site.rate_gpm)
  const total = (busy: number) => rates.cases[busy - 1]?.total_gpm ?? 0
  return {
    ...shared, ...(lift && { lift }), draft, fillCase: busiest,
    bayRate_gpm: bays(bayCount, (busy) =>
      measured_gpm === undefined ? total(busy) / busy : Math.min(measured_gpm, Math.max(measured_gpm, total(busy)) / busy)),
    limit: measured_gpm === undefined ? limit : 'measured',
    draftLimit: isHydrant ? 'hydrant' : (draft?.limitedBy ?? null),
    issues: cannotReach || total(1) > 0 || measured_gpm !== undefined ? issues : [...issues, issue('fill-site-dry', 'block', [site.id, pump.id])],
  }
}

/**
 * A fill site at the far end of a hose lay: the bays share what the lay brings, each no more than its inlets pass at the pressure left there.
 *
 *   rate = min(flow / bays in use, inlets · C · √outlet pressure)
 */
function fedSite(bundle: Bundle, site: FillSite, tenders: readonly Tender[], staffed: Staffed | undefined, { lay, flow_gpm, ready_s, outlet_psi, water }: ResolvedLay): ResolvedFillSite {
  const bayCount = placesOpen(site.bayCount ?? 1, staffed)
  const inlet_gpm = Math.min(...(tenders.length === 0 ? [{}] : tenders).map((tender: Pick<Tender, 'fillInlet_in' | 'fillInletCount'>) =>
    linesInto(site, tender) * assumedInletCoefficient(tender.fillInlet_in ?? defaults.fillInlet_in.value) * Math.sqrt(outlet_psi)))
  const source = sourceOfLay(bundle, lay.fromId)
  const opens_s = Math.max(ready_s, staffed?.placeAt_s[0] ?? 0)
  return {
    site, source, water, ready_s: opens_s, ...laterPlaces('bayAfter_s', bayCount, opens_s, staffed),
    ...(site.bayOrder === 'oneAtATime' && bayCount > 1 && { flowingBayCount: 1 }),
    bayRate_gpm: bays(bayCount, (busy) => Math.min(flow_gpm / busy, Math.max(1, inlet_gpm))),
    limit: flow_gpm <= inlet_gpm ? 'lay' : 'inlet', draftLimit: null, issues: [],
  }
}

/** Places that get their people, at least one. */
export const placesOpen = (count: number, staffed: Staffed | undefined): number => (staffed ? Math.max(1, Math.min(count, staffed.placeAt_s.length)) : count)

/** How much later than the first each place opens, where any does. */
export function laterPlaces<F extends string>(field: F, count: number, ready_s: number, staffed: Staffed | undefined): { [K in F]?: number[] } {
  const after_s = Array.from({ length: count }, (_, k) => Math.max(0, (staffed?.placeAt_s[k] ?? 0) - ready_s))
  return after_s.some((wait_s) => wait_s > 0) ? { [field]: after_s } as { [K in F]: number[] } : {}
}

const bays = <T>(count: number, of: (busy: number) => T): T[] => Array.from({ length: count }, (_, index) => of(index + 1))

function limitOf(fillCase: FillCase | undefined): FillSiteResult['fillLimit'] {
  switch (fillCase?.limitedBy) {
    case 'supply': return 'draft'
    case 'discharge-pressure': return 'pressure'
    case 'inlet-pressure': return 'inlet'
    case 'tender': return 'vent'
    case undefined: return null
  }
}
