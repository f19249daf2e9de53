import { requireThat } from '../issue'
import { chanceTableFor } from './chance'
import { demandTableFor } from './demand-table'
import { feedTableFor } from './feed-table'
import { poolTableFor, type PoolTable } from './pool-table'
import type { EntityTable, FillTable, Scenario, SlotTable, TenderTable } from './scenario'
import type { ShuttleSpec, TenderSpec } from './spec'
import { dumpAlone_s } from './round-of'
import { specBreaches } from './spec-breaches'
import { startOf } from './start'
import { wayTablesFor } from './way-table'

/**
 * Turns a spec into the immutable tables that runs are made on.
 *
 * @param options.exponential every stage takes an exponential time with the planned mean:
 *   for checks against queueing theory only
 * @throws RangeError for the first number that breaks its contract, see `specBreaches`
 */
export function compileShuttle(spec: ShuttleSpec, options: { readonly exponential?: boolean } = {}): Scenario {
  const breach = specBreaches(spec)[0]
  if (breach) requireThat(false, breach.path, breach.value, breach.rule)
  const { dumps, fills, tenders } = spec
  const slots = slotTableFor([
    ...dumps.map(({ positionCount, ready_s, positionAfter_s }) => ({ count: positionCount, ready_s, after_s: positionAfter_s })),
    ...fills.map(({ bayCount, ready_s, bayAfter_s }) => ({ count: bayCount, ready_s, after_s: bayAfter_s })),
  ])
  const pools = poolTableFor(spec)
  const feeds = feedTableFor(spec, pools)
  const tables = {
    spec,
    ids: [...dumps, ...fills, ...tenders].map(({ id }) => id),
    seed: spec.seed,
    tenders: tenderTableFor(tenders),
    dumps: {
      count: dumps.length,
      ready_s: Float64Array.from(dumps, ({ ready_s }) => ready_s),
      pumpReady_s: Float64Array.from(dumps, ({ pumpReady_s }) => pumpReady_s),
      capacity_gal: Float64Array.from(dumps, ({ capacity_gal }) => capacity_gal),
      reprime_s: Float64Array.from(dumps, ({ reprime_s }) => reprime_s),
      booster_gal: Float64Array.from(dumps, ({ booster_gal }) => booster_gal),
      share: Float64Array.from(dumps, ({ demandShare }) => demandShare),
      front_gal: Float64Array.from(dumps, ({ front }) => front?.capacity_gal ?? 0),
      transfer_gpm: Float64Array.from(dumps, ({ front }) => front?.transfer_gpm ?? 0),
      intakeLimit_gpm: Float64Array.from(dumps, ({ intakeLimit_gpm }) => intakeLimit_gpm ?? Infinity),
      initial_gal: Float64Array.from(dumps, ({ startsFull, capacity_gal }) => (startsFull ? capacity_gal : 0)),
      leak_gpm: Float64Array.from(dumps, ({ leak_gpm }) => leak_gpm ?? 0),
    },
    fills: fillTableFor(spec, pools),
    feeds,
    pools,
    slots,
    laneCount: spec.lanes?.length ?? 0,
    entities: entityTableFor(tenders.length, dumps.length, fills.length, slots.late.length > 0, feeds.steps.length > 0, pools.count),
    demand: demandTableFor(spec, 'planned', {}, pools),
    chance: chanceTableFor(spec, options.exponential ?? false),
  }
  return { ...tables, start: startOf(tables) }
}

/** The same tables with another seed. */
export function withSeed(scenario: Scenario, seed: number): Scenario {
  requireThat(Number.isInteger(seed), 'seed', seed, 'a whole number')
  return { ...scenario, seed }
}

function tenderTableFor(tenders: readonly TenderSpec[]): TenderTable {
  const floats = (valueOf: (tender: TenderSpec) => number) => Float64Array.from(tenders, valueOf)
  let part = 0
  return {
    count: tenders.length,
    load_gal: floats(({ usable_gal }) => usable_gal),
    arrive_s: floats(({ arrive_s }) => arrive_s ?? Infinity),
    withdraw_s: floats(({ withdraw_s }) => withdraw_s ?? Infinity),
    dump: Int32Array.from(tenders, ({ dumpIndex }) => dumpIndex),
    fill: Int32Array.from(tenders, ({ fillIndex }) => fillIndex),
    toFill_s: floats(({ toFill_s }) => toFill_s),
    toDump_s: floats(({ toDump_s }) => toDump_s),
    dumpPosition_s: floats(({ dumpPosition_s }) => dumpPosition_s),
    dumpClear_s: floats(({ dumpClear_s }) => dumpClear_s),
    fillPosition_s: floats(({ fillPosition_s }) => fillPosition_s),
    fillClear_s: floats(({ fillClear_s }) => fillClear_s),
    fillLimit_gpm: floats(({ fillLimit_gpm }) => fillLimit_gpm),
    topUpFrom_gal: floats(({ usable_gal, topUpShare }) => usable_gal * (1 - topUpShare)),
    topUpRateShare: floats(({ topUpRateShare }) => topUpRateShare),
    keptShare: floats(({ spillShare }) => 1 - (spillShare ?? 0)),
    dumpRate_gpm: Float64Array.from(tenders.flatMap(({ dumpRate_gpm }) => dumpRate_gpm)),
    partFrom: Int32Array.from(tenders, ({ dumpRate_gpm }) => { const from = part; part += dumpRate_gpm.length; return from }),
    partCount: Int32Array.from(tenders, ({ dumpRate_gpm }) => dumpRate_gpm.length),
    dumpAlone_s: floats(dumpAlone_s),
    restAfter_s: floats(({ rest }) => rest?.after_s ?? Infinity),
    rest_s: floats(({ rest }) => rest?.break_s ?? 0),
    ...wayTablesFor(tenders),
  }
}

function fillTableFor({ fills }: ShuttleSpec, pools: PoolTable): FillTable {
  let rate = 0
  return {
    count: fills.length,
    ready_s: Float64Array.from(fills, ({ ready_s }) => ready_s),
    usable_gal: Float64Array.from(fills, ({ usable_gal }, f) => (pools.ofFill[f]! >= 0 ? Infinity : (usable_gal ?? Infinity))),
    inflow_gpm: Float64Array.from(fills, ({ inflow_gpm }) => inflow_gpm ?? 0),
    bayRate_gpm: Float64Array.from(fills.flatMap(({ bayRate_gpm }) => bayRate_gpm)),
    rateFrom: Int32Array.from(fills, ({ bayCount }) => { const from = rate; rate += bayCount; return from }),
    flowing: Int32Array.from(fills, ({ bayCount, flowingBayCount }) => flowingBayCount ?? bayCount),
  }
}

type Places = { readonly count: number; readonly ready_s: number; readonly after_s: readonly number[] | undefined }

function slotTableFor(sites: readonly Places[]): SlotTable {
  let slot = 0
  const from = Int32Array.from(sites, ({ count }) => { const first = slot; slot += count; return first })
  const late = sites.flatMap(({ ready_s, after_s }, site) => (after_s ?? []).flatMap((wait_s, k) => (wait_s > 0 ? [{ slot: from[site]! + k, site, from_s: ready_s + wait_s }] : [])))
  return { count: slot, from, upTo: Int32Array.from(sites, ({ count }, i) => from[i]! + count), late: late.sort((a, b) => a.from_s - b.from_s) }
}

/** What brings water or asks for it happens before what runs out at the same moment. */
function entityTableFor(tenders: number, dumps: number, fills: number, hasLatePlaces: boolean, hasFeeds: boolean, poolCount: number): EntityTable {
  const demand = tenders
  const engine = demand + 1
  const pumpers = engine + 1
  const levels = pumpers + dumps
  const places = levels + dumps + fills
  const feeds = places + (hasLatePlaces ? 1 : 0)
  const pools = feeds + (hasFeeds ? 1 : 0)
  return { count: pools + poolCount, pools, demand, engine, pumpers, dumps: levels, fills: levels + dumps, places, feeds }
}
