import { issue, isBlocking, type Issue } from '../issue'
import { FIRE_GROUND, checkPlan, findApparatus, findTender, type Bundle } from '../plan'
import type { ShuttleSpec } from '../shuttle'
import { arrival } from './arrival'
import { defaults } from './defaults'
import { resolveDemand, type ResolvedDemand } from './demand'
import { resolveDumpSite, type ResolvedDumpSite } from './dump-site'
import { resolveFillSite, type ResolvedFillSite } from './fill-site'
import { feedsOf, findOwnSupply, resolveLays, type ResolvedLay } from './hose-lay/resolve-lays'
import { startLedger, take, type Ledger } from './ledger'
import { sitePairs } from './legs'
import { lanesOf } from './one-lane'
import { staffedLay } from './plan-lays'
import { staffingOf } from './staffing'
import { resolveTender, type ResolvedTender } from './tender'
import { wayIssues, waysOf, type Ways } from './ways'

/** A plan worked out as far as numbers: all that the shuttle and the explanations need. */
export type CompiledPlan = {
  readonly bundle: Bundle
  readonly ledger: Ledger
  readonly ways: Ways
  readonly demand: ResolvedDemand
  readonly fills: readonly ResolvedFillSite[]
  readonly dumps: readonly ResolvedDumpSite[]
  readonly tenders: readonly ResolvedTender[]
  /** Hose lays that count in the flow. */
  readonly lays: readonly ResolvedLay[]
  readonly duration_s: number
  readonly firstArrive_s?: number
  /** Absent when something blocks the answer. */
  readonly spec?: ShuttleSpec
  readonly issues: readonly Issue[]
}

/**
 * Resolves a bundle into numbers: ways, what each site moves, who arrives when.
 *
 * No simulation is done and no road graph is needed. Blocking issues leave `spec` out.
 *
 * @param options.factors other values for numbers of the ledger, by their keys: what each is multiplied by
 */
export function compilePlan(bundle: Bundle, { factors }: { readonly factors?: ReadonlyMap<string, number> } = {}): CompiledPlan {
  const { plan } = bundle
  const ledger = startLedger(factors)
  const ways = waysOf(bundle, ledger)
  const demand = resolveDemand(bundle)
  const issues: Issue[] = [...checkPlan(bundle), ...demand.issues, ...wayIssues(bundle, ways)]
  const duration_s = take(ledger, plan, 'duration_s', plan.duration_s, defaults.duration_s)
  const base = { bundle, ledger, ways, demand, duration_s }
  if (isBlocking(issues)) return { ...base, fills: [], dumps: [], tenders: [], lays: [], issues }

  const fillIndex = new Map(plan.fillSites.map(({ id }, index) => [id as string, index]))
  const dumpIndex = new Map(plan.dumpSites.map(({ id }, index) => [id as string, index]))
  const tenders: ResolvedTender[] = []
  for (const task of plan.tenders) {
    const { resolved, issues: found } = resolveTender(bundle, ledger, ways, task, fillIndex, dumpIndex)
    issues.push(...found)
    if (resolved) tenders.push(resolved)
  }
  if (tenders.length === 0) issues.push(issue('no-tender-left', 'block', [plan.id]))

  const { lays: unstaffed, issues: layIssues } = resolveLays(bundle, ledger, ways)
  issues.push(...layIssues)
  const staffing = staffingOf(bundle, ledger, ways, tenders, unstaffed)
  issues.push(...staffing.issues)
  const lays = unstaffed.map((lay) => staffedLay(lay, staffing.lays.get(lay.lay.id)))
  const fills = plan.fillSites.map((site) => {
    const here = plan.tenders.flatMap((task) => {
      const tender = findTender(bundle, task.tenderId)
      return tender && sitePairs(bundle, task).some(({ fillSiteId }) => fillSiteId === site.id) ? [tender] : []
    })
    return resolveFillSite(bundle, ledger, ways, site, here, staffing.sites.get(site.id), findOwnSupply(lays, site))
  })
  const shares = demandShares(plan.dumpSites)
  const dumps = plan.dumpSites.map((site, index) => {
    const arrivals = tenders.filter(({ dumpSiteId }) => dumpSiteId === site.id).map(({ spec }) => spec.arrive_s ?? Infinity)
    const first_s = arrivals.length > 0 ? Math.min(...arrivals) : undefined
    return resolveDumpSite(bundle, ledger, ways, site, first_s, shares[index] ?? 0, staffing.sites.get(site.id))
  })
  issues.push(...fills.flatMap((fill) => fill.issues), ...dumps.flatMap((dump) => dump.issues))
  issues.push(...lays.flatMap(({ water }) => water.issues).filter((one) => !issues.some((known) => isSameIssue(known, one))), ...sharedSources(fills, lays))

  const firstDue = findApparatus(bundle, plan.firstDueId)
  const reached = firstDue && arrival(bundle, ledger, ways, firstDue, FIRE_GROUND)
  let firstArrive_s: number | undefined
  if (reached && 'code' in reached) issues.push(reached.code === 'place-missing' ? issue('fire-ground-missing', 'warn', [plan.id]) : { ...reached, severity: 'warn' })
  else if (reached) {
    firstArrive_s = reached.arrive_s
    issues.push(...reached.issues)
  }
  if (!firstDue) issues.push(issue('first-due-missing', 'warn', [plan.id]))
  else if (!firstDue.tank_gal) issues.push(issue('first-due-tank-missing', 'warn', [firstDue.id]))
  issues.push(...fuelIssues(bundle, ledger, duration_s, dumps, fills, lays))
  const compiled = { ...base, fills, dumps, tenders, lays, firstArrive_s, issues }
  return isBlocking(issues) ? compiled : { ...compiled, spec: shuttleSpec(compiled, firstArrive_s, firstDue?.tank_gal) }
}

const isSameIssue = (a: Issue, b: Issue): boolean => a.code === b.code && a.subjectIds.join() === b.subjectIds.join()

/** Water that runs out and is drawn on by several is one water: who shares it is said. */
function sharedSources(fills: readonly ResolvedFillSite[], lays: readonly ResolvedLay[]): Issue[] {
  const users = [
    ...fills.flatMap(({ site, source, water }) => (source && water.usable_gal !== undefined && !lays.some((lay) => findOwnSupply([lay], site)) ? [{ id: site.id as string, sourceId: source.id as string }] : [])),
    ...lays.flatMap(({ lay, sourceId, water }) => (sourceId !== undefined && water.usable_gal !== undefined ? [{ id: lay.id as string, sourceId }] : [])),
  ]
  return [...new Set(users.map(({ sourceId }) => sourceId))].flatMap((source) => {
    const ids = users.flatMap(({ id, sourceId }) => (sourceId === source ? [id] : []))
    return ids.length > 1 ? [issue('source-shared', 'note', ids, { source })] : []
  })
}

/** Shares of the demand by site: as entered, the rest evenly; together always 1. */
function demandShares(sites: readonly { demandShare?: number }[]): number[] {
  const entered = sites.reduce((sum, { demandShare }) => sum + (demandShare ?? 0), 0)
  const open = sites.filter(({ demandShare }) => demandShare === undefined).length
  const raw = sites.map(({ demandShare }) => demandShare ?? Math.max(0, 1 - entered) / open)
  const total = raw.reduce((sum, share) => sum + share, 0)
  return raw.map((share) => (total > 0 ? share / total : 1 / sites.length))
}

/** Pumpers that would pump longer than their fuel lasts. */
function fuelIssues(bundle: Bundle, ledger: Ledger, duration_s: number, dumps: readonly ResolvedDumpSite[], fills: readonly ResolvedFillSite[], lays: readonly ResolvedLay[]): Issue[] {
  if (duration_s < defaults.restAfter_s.value / 2) return []
  const end_s = duration_s + Math.max(0, ...dumps.map(({ spec }) => spec.pumpReady_s), ...fills.map(({ ready_s }) => ready_s))
  const pumpers = [
    ...fills.map(({ site, ready_s }) => ({ id: site.pumperId, from_s: ready_s })),
    ...dumps.map(({ site, spec }) => ({ id: site.pumperId, from_s: spec.pumpReady_s })),
    ...lays.flatMap(({ pumperIds, ready_s }) => pumperIds.map((id) => ({ id, from_s: ready_s }))),
  ]
  return pumpers.flatMap(({ id, from_s }) => {
    const pumper = findApparatus(bundle, id)
    if (pumper?.kind !== 'pumper') return []
    const pumping_s = end_s - from_s
    if (pumping_s <= (pumper.fuel_s ?? defaults.fuel_s.value)) return []
    return [issue('fuel-runs-out', 'warn', [pumper.id], { pumping_s, fuel_s: take(ledger, pumper, 'fuel_s', pumper.fuel_s, defaults.fuel_s) })]
  })
}

/** Long enough for supply to become ready late and then last. */
const READY_ALLOWANCE_S = 3 * 3600

function shuttleSpec(compiled: Omit<CompiledPlan, 'spec'>, firstArrive_s: number | undefined, tank_gal: number | undefined): ShuttleSpec {
  const { bundle, ledger, fills, dumps, tenders, lays, demand, duration_s } = compiled
  const feeds = feedsOf(bundle, lays)
  const { plan } = bundle
  const lastStart_s = Math.max(0, ...dumps.map(({ spec }) => spec.pumpReady_s), ...fills.map(({ ready_s }) => ready_s), ...tenders.map(({ spec }) => spec.arrive_s ?? 0))
  const lanes = lanesOf(bundle)
  const firstLine_s = take(ledger, plan, 'firstLine_s', plan.firstLine_s, defaults.firstLine_s)
  return {
    seed: 1,
    horizon_s: lastStart_s + READY_ALLOWANCE_S + duration_s,
    afterReady_s: duration_s,
    fills: fills.map(({ site, source, ready_s, bayRate_gpm, bayAfter_s, flowingBayCount, water }) => ({
      id: site.id, ready_s, bayRate_gpm,
      bayCount: bayRate_gpm.length,
      ...(bayAfter_s && { bayAfter_s }),
      ...(flowingBayCount !== undefined && { flowingBayCount }),
      ...(water.usable_gal !== undefined && { usable_gal: water.usable_gal }),
      ...(water.inflow_gpm !== undefined && { inflow_gpm: water.inflow_gpm }),
      ...(source && water.usable_gal !== undefined && { sourceId: source.id }),
    })),
    dumps: dumps.map(({ spec }) => spec),
    tenders: tenders.map(({ spec }) => spec),
    ...(lanes.length > 0 && { lanes }),
    ...(feeds.length > 0 && { feeds }),
    demand: {
      stages: demand.stages,
      reserve_s: plan.reserve_s ?? defaults.reserve_s.value,
      ...(firstArrive_s !== undefined && tank_gal ? { firstDue: { arrive_s: firstArrive_s + firstLine_s, tank_gal } } : {}),
    },
  }
}
