import type { FeedTable } from './feed-table'
import type { PoolTable } from './pool-table'
import type { SimState } from './state'
import type { ShuttleSpec, TripFactors } from './spec'

/** Tenders, one entry each. Volumes in gal, rates in gpm, times in s. */
export type TenderTable = {
  readonly count: number
  readonly load_gal: Float64Array
  readonly arrive_s: Float64Array
  readonly withdraw_s: Float64Array
  readonly dump: Int32Array
  readonly fill: Int32Array
  readonly toFill_s: Float64Array
  readonly toDump_s: Float64Array
  readonly dumpPosition_s: Float64Array
  readonly dumpClear_s: Float64Array
  readonly fillPosition_s: Float64Array
  readonly fillClear_s: Float64Array
  readonly fillLimit_gpm: Float64Array
  /** Water aboard at which the slow last part of the filling begins. */
  readonly topUpFrom_gal: Float64Array
  readonly topUpRateShare: Float64Array
  readonly keptShare: Float64Array
  /** Dump rates of all tenders end to end; tender i owns `partCount[i]` from `partFrom[i]`. */
  readonly dumpRate_gpm: Float64Array
  readonly partFrom: Int32Array
  readonly partCount: Int32Array
  /** Time to dump into tanks with room, for the choice of a site. */
  readonly dumpAlone_s: Float64Array
  /** A break after this time in the shuttle; Infinity: none. */
  readonly restAfter_s: Float64Array
  readonly rest_s: Float64Array
  /** Ways of all tenders end to end; tender i owns `wayCount[i]` from `wayFrom[i]`, its own two sites where it does not choose. */
  readonly wayFrom: Int32Array
  readonly wayCount: Int32Array
  readonly ways: WayTable
  /** Some tender chooses among dump sites: what each site gets is not settled beforehand. */
  readonly choosesDump: boolean
}

/** Passes of one-lane stretches of all ways end to end; way w meets those from `…From[w]` up to `…UpTo[w]`. */
export type WayTable = {
  readonly dump: Int32Array
  readonly fill: Int32Array
  readonly toFill_s: Float64Array
  readonly toDump_s: Float64Array
  readonly toFillFrom: Int32Array
  readonly toFillUpTo: Int32Array
  readonly toDumpFrom: Int32Array
  readonly toDumpUpTo: Int32Array
  readonly lane: Int32Array
  readonly at_s: Float64Array
  readonly pass_s: Float64Array
}

export type DumpTable = {
  readonly count: number
  readonly ready_s: Float64Array
  readonly pumpReady_s: Float64Array
  readonly capacity_gal: Float64Array
  readonly reprime_s: Float64Array
  readonly booster_gal: Float64Array
  readonly share: Float64Array
  /** Capacity of the tanks in front, 0 where there are none. */
  readonly front_gal: Float64Array
  readonly transfer_gpm: Float64Array
  /** Infinity where the site takes what it is given. */
  readonly intakeLimit_gpm: Float64Array
  readonly leak_gpm: Float64Array
  /** In the tanks from the start. */
  readonly initial_gal: Float64Array
}

export type FillTable = {
  readonly count: number
  readonly ready_s: Float64Array
  /** Infinity when the source does not run out, or is shared (`pools`). */
  readonly usable_gal: Float64Array
  readonly inflow_gpm: Float64Array
  /** Bay rates of all sites end to end; site i's rate with n bays filling is at `rateFrom[i] + n - 1`. */
  readonly bayRate_gpm: Float64Array
  readonly rateFrom: Int32Array
  /** Bays that flow at once. */
  readonly flowing: Int32Array
}

/** Dump positions and fill bays of all sites end to end: dump sites first, then fill sites. */
export type SlotTable = {
  readonly count: number
  readonly from: Int32Array
  readonly upTo: Int32Array
  /** Places that open after their site, by time. */
  readonly late: readonly { readonly slot: number; readonly site: number; readonly from_s: number }[]
}

/**
 * The demand as stages, with what each asks of each dump site; entry of stage k and
 * dump d is at `k · dumps + d`. Stage 0 holds from the start of the run. Where lays straight to the fire ground share a source the stages
 * stand there once for every set of such sources run dry: row `k + variant · stageCount`, the bits of `variant` as in `PoolTable.bit`.
 */
export type DemandTable = {
  readonly kind: 'planned' | 'open' | 'constant'
  readonly stageCount: number
  readonly pools: PoolTable
  readonly from_s: Float64Array
  readonly flow_gpm: Float64Array
  readonly siteFlow_gpm: Float64Array
  /** What hose lays bring straight to the fire ground; entry of stage k and lay j is at `k · lays + j`. */
  readonly direct_gpm: Float64Array
  readonly limit_gal: Float64Array
  readonly reserve_gal: Float64Array
  readonly restart_gal: Float64Array
  /** Volume at which dumping is held back: the tanks' capacity, Infinity in an open run. */
  readonly lip_gal: Float64Array
  readonly engineArrive_s: number
  readonly engineTank_gal: number
  /** From then on time short counts: the first engine's arrival, else the first flow asked for. */
  readonly countFrom_s: number
  /** The run ends this long after all supply is ready; Infinity: goes on. */
  readonly afterReady_s: number
  /** The run ends when a draft is lost: enough to know that a flow cannot be held. */
  readonly endsAtLoss: boolean
}

/** Factors on planned times; entry of tender i and stage k is at `(i · stages + k) · 3`: low, mode, high. */
export type ChanceTable = {
  readonly law: 'triangular' | 'exponential'
  readonly tenderEntity: Int32Array
  readonly night: Float64Array
  readonly trip: Float64Array
  readonly fillEntity: Int32Array
  readonly fillNight: Float64Array
  readonly fillTrip: Float64Array
  /** Known factors of single trips, by the same rows as `trip`; absent: none is known. */
  readonly known: readonly (TripFactors | undefined)[] | undefined
}

/** Where in the event queue each entity stands; also the order in which simultaneous events happen. */
export type EntityTable = {
  readonly count: number
  readonly demand: number
  readonly engine: number
  readonly pumpers: number
  readonly dumps: number
  readonly fills: number
  /** Late places; there is no such entity where none is late. */
  readonly places: number
  /** Steps of hose lays; there is no such entity where none leads to a site or shares a source. */
  readonly feeds: number
  /** Shared sources. */
  readonly pools: number
}

/** A compiled spec: immutable tables, shared by every state that runs on it. */
export type Scenario = {
  readonly spec: ShuttleSpec
  /** Ids of dumps, fills and tenders, in that order. */
  readonly ids: readonly string[]
  readonly seed: number
  readonly tenders: TenderTable
  readonly dumps: DumpTable
  readonly fills: FillTable
  readonly feeds: FeedTable
  readonly pools: PoolTable
  readonly slots: SlotTable
  readonly laneCount: number
  readonly entities: EntityTable
  readonly demand: DemandTable
  readonly chance: ChanceTable | undefined
  /** The state before anything happened, copied by `begin`. */
  readonly start: SimState
}
