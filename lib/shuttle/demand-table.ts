import { requireNotNegative, requirePositive } from '../issue'
import { SECONDS_PER_MINUTE } from '../units'
import { draftLimitAt } from './draft-limit'
import { isDirect } from './direct-feed'
import { feedFlowAt, feedSteps } from './feed-table'
import type { PoolTable } from './pool-table'
import type { DemandTable, Scenario } from './scenario'
import type { FeedSpec, ShuttleSpec } from './spec'

/** How the fire ground asks in a run: as planned, not at all with dumping never blocked, or one flow throughout. */
export type RunDemand = 'planned' | 'open' | number

/** Time of flow above the draft limit that counts as water again after a lost draft: assumed, common practice has no figure. */
const RESTART_MARGIN_S = 30
/** How long a named run lasts from supply ready where the spec says nothing. */
export const AFTER_READY_S = 7200
/** A draft is never sought on less water than this above the limit, so that every loss takes time. */
const LEAST_RESTART_GAL = 1

export type DemandOptions = {
  afterReady_s?: number
  endsAtLoss?: boolean
  /** From here on the tanks must keep their reserve where they can hold it: falling below it counts as a lost draft. */
  keepReserveFrom_s?: number
}

type Stage = { from_s: number; flow_gpm: number; keepsReserve: boolean }

/** What a lay to the fire ground brings at a moment, with the shared sources of a variant run dry. */
function directFlow_gpm(feed: FeedSpec, j: number, from_s: number, { pools, variant }: Dry): number {
  const p = pools.ofFeed[j]!
  if (p < 0) return feedFlowAt(feed, from_s)
  if (from_s < feed.ready_s) return 0
  return (variant >> pools.bit[p]!) & 1 ? pools.lowFeed_gpm[j]! : feed.flow_gpm
}

type Dry = { readonly pools: PoolTable; readonly variant: number }

/** What lays to the fire ground bring in a stage, no more than is asked and each its part, and what is left for the sites. */
function direct(spec: ShuttleSpec, from_s: number, flow_gpm: number, dry: Dry): { readonly direct_gpm: readonly number[]; readonly rest_gpm: number } {
  const could_gpm = (spec.feeds ?? []).map((feed, j) => (isDirect(feed) ? directFlow_gpm(feed, j, from_s, dry) : 0))
  const sum_gpm = could_gpm.reduce((sum, gpm) => sum + gpm, 0)
  if (sum_gpm < flow_gpm) return { direct_gpm: could_gpm, rest_gpm: flow_gpm - sum_gpm }
  return { direct_gpm: sum_gpm > 0 ? could_gpm.map((gpm) => (gpm * flow_gpm) / sum_gpm) : could_gpm, rest_gpm: 0 }
}

/**
 * The demand of a run as a table, with the draft limit, reserve and restart volume of
 * every dump site in every stage.
 *
 *   reserve = draft limit(Q) + reserve_s · Q, at most the capacity;
 *   restart = draft limit(Q) + restartMargin_s · Q, at least 1 gal above the limit, at most the capacity;
 *   never when the tanks do not hold 1 gal above the limit
 *
 * A stage that asks for nothing takes its reserve from the next one that does. Hose lays straight to the fire ground make stages of
 * their own: what they bring is not asked of the sites.
 *
 * @throws RangeError if a constant flow is negative or not finite
 */
export function demandTableFor(spec: ShuttleSpec, demand: RunDemand, options: DemandOptions, pools: PoolTable): DemandTable {
  if (typeof demand === 'number') requireNotNegative('demand', demand)
  if (options.afterReady_s !== undefined && options.afterReady_s !== Infinity) requirePositive('afterReady_s', options.afterReady_s)
  const stages = stagesOf(spec, demand, options.keepReserveFrom_s ?? Infinity, pools)
  const variantCount = 2 ** pools.bitCount
  const dumpCount = spec.dumps.length
  const size = stages.length * variantCount * dumpCount
  const siteFlow_gpm = new Float64Array(size)
  const limit_gal = new Float64Array(size)
  const reserve_gal = new Float64Array(size)
  const restart_gal = new Float64Array(size)
  const isOpen = demand === 'open'
  const direct_gpm = new Float64Array(stages.length * variantCount * (spec.feeds?.length ?? 0))
  const rows = { siteFlow_gpm, limit_gal, reserve_gal, restart_gal, direct_gpm }
  stages.forEach((stage, k) => {
    const asked_gpm = stage.flow_gpm > 0 ? stage.flow_gpm : stages.slice(k).find(({ flow_gpm }) => flow_gpm > 0)?.flow_gpm ?? 0
    for (let variant = 0; variant < variantCount; variant++) setRow(spec, rows, k + variant * stages.length, stage, asked_gpm, isOpen, { pools, variant })
  })
  const engine = spec.demand.firstDue
  const firstAsked = stages.find(({ flow_gpm }) => flow_gpm > 0)
  return {
    kind: typeof demand === 'number' ? 'constant' : demand,
    stageCount: stages.length,
    pools,
    from_s: Float64Array.from(stages, ({ from_s }) => from_s),
    flow_gpm: Float64Array.from(stages, ({ flow_gpm }) => (isOpen ? 0 : flow_gpm)),
    siteFlow_gpm,
    direct_gpm,
    limit_gal,
    reserve_gal,
    restart_gal,
    lip_gal: Float64Array.from(spec.dumps, ({ capacity_gal }) => (isOpen ? Infinity : capacity_gal)),
    engineArrive_s: engine?.arrive_s ?? Infinity,
    engineTank_gal: engine?.tank_gal ?? 0,
    countFrom_s: engine?.arrive_s ?? firstAsked?.from_s ?? Infinity,
    afterReady_s: options.afterReady_s ?? Infinity,
    endsAtLoss: options.endsAtLoss ?? false,
  }
}

type Rows = Pick<DemandTable, 'siteFlow_gpm' | 'direct_gpm' | 'limit_gal' | 'reserve_gal' | 'restart_gal'>

function setRow(spec: ShuttleSpec, rows: Rows, k: number, { from_s, flow_gpm, keepsReserve }: Stage, asked_gpm: number, isOpen: boolean, dry: Dry): void {
  const now = spec.feeds && !isOpen ? direct(spec, from_s, flow_gpm, dry) : undefined
  now?.direct_gpm.forEach((gpm, j) => { rows.direct_gpm[k * now.direct_gpm.length + j] = gpm })
  const rest_gpm = now?.rest_gpm ?? flow_gpm
  const restAsked_gpm = now ? direct(spec, from_s, asked_gpm, dry).rest_gpm : asked_gpm
  for (let d = 0; d < spec.dumps.length; d++) {
    const dump = spec.dumps[d]!
    const at = k * spec.dumps.length + d
    const site_gpm = rest_gpm * dump.demandShare
    const aim_gpm = restAsked_gpm * dump.demandShare
    const aim_gal = draftLimitAt(dump, aim_gpm) + (spec.demand.reserve_s * aim_gpm) / SECONDS_PER_MINUTE
    const margin_gal = Math.max(LEAST_RESTART_GAL, ((dump.restartMargin_s ?? RESTART_MARGIN_S) * site_gpm) / SECONDS_PER_MINUTE)
    const limit_gal = keepsReserve && aim_gal <= dump.capacity_gal ? aim_gal : draftLimitAt(dump, site_gpm)
    rows.siteFlow_gpm[at] = isOpen ? 0 : site_gpm
    rows.limit_gal[at] = limit_gal
    rows.reserve_gal[at] = Math.min(dump.capacity_gal, aim_gal)
    rows.restart_gal[at] = limit_gal + LEAST_RESTART_GAL <= dump.capacity_gal ? Math.min(dump.capacity_gal, limit_gal + margin_gal) : Infinity
  }
}

/**
 * Another constant flow in a table made for one, in place: for searches, on a table nobody else holds.
 */
export function resetConstantFlow(spec: ShuttleSpec, table: DemandTable, flow_gpm: number, keepReserveFrom_s: number): void {
  for (let k = 0; k < table.stageCount; k++) {
    table.flow_gpm[k] = flow_gpm
    const from_s = table.from_s[k]!
    const stage = { from_s, flow_gpm, keepsReserve: from_s >= keepReserveFrom_s }
    for (let variant = 0; variant < 2 ** table.pools.bitCount; variant++) setRow(spec, table, k + variant * table.stageCount, stage, flow_gpm, false, { pools: table.pools, variant })
  }
}

function stagesOf(spec: ShuttleSpec, demand: RunDemand, keepReserveFrom_s: number, pools: PoolTable): Stage[] {
  const asked = typeof demand === 'number' ? [{ from_s: 0, flow_gpm: demand }] : spec.demand.stages
  const stages: Stage[] = asked.map((stage) => ({ ...stage, keepsReserve: stage.from_s >= keepReserveFrom_s }))
  const first = stages[0]
  if (!first || first.from_s > 0) stages.unshift({ from_s: 0, flow_gpm: 0, keepsReserve: false })
  for (const [j, feed] of demand === 'open' ? [] : (spec.feeds ?? []).entries()) {
    if (isDirect(feed)) for (const { at_s } of pools.ofFeed[j]! < 0 ? feedSteps(feed, j) : [{ at_s: feed.ready_s }]) splitAt(stages, at_s)
  }
  const within = stages.findLast(({ from_s }) => from_s <= keepReserveFrom_s)
  if (within && within.from_s < keepReserveFrom_s && Number.isFinite(keepReserveFrom_s)) {
    stages.splice(stages.indexOf(within) + 1, 0, { ...within, from_s: keepReserveFrom_s, keepsReserve: true })
  }
  return stages
}

/** A stage of its own from a moment on, asking what was asked before. */
function splitAt(stages: Stage[], at_s: number): void {
  const within = stages.findLastIndex(({ from_s }) => from_s <= at_s)
  const stage = stages[within]
  if (stage && stage.from_s < at_s) stages.splice(within + 1, 0, { ...stage, from_s: at_s })
}

/** The same tables with another demand. Who shares a source does not hang on it. */
export function withDemand(scenario: Scenario, demand: RunDemand, options: DemandOptions = {}): Scenario {
  return { ...scenario, demand: demandTableFor(scenario.spec, demand, options, scenario.pools) }
}
