import type { SimState } from './state'
import type { ShuttleSpec } from './spec'

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
}

export type DumpTable = {
  readonly count: number
  readonly ready_s: Float64Array
  readonly pumpReady_s: Float64Array
  readonly capacity_gal: Float64Array
  readonly reprime_s: Float64Array
  readonly booster_gal: Float64Array
  readonly share: Float64Array
}

export type FillTable = {
  readonly count: number
  readonly ready_s: Float64Array
  /** Infinity when the source does not run out. */
  readonly usable_gal: Float64Array
  readonly inflow_gpm: Float64Array
  /** Bay rates of all sites end to end; site i's rate with n bays filling is at `rateFrom[i] + n - 1`. */
  readonly bayRate_gpm: Float64Array
  readonly rateFrom: Int32Array
}

/** Dump positions and fill bays of all sites end to end: dump sites first, then fill sites. */
export type SlotTable = {
  readonly count: number
  readonly from: Int32Array
  readonly upTo: Int32Array
}

/**
 * The demand as stages, with what each asks of each dump site; entry of stage k and
 * dump d is at `k · dumps + d`. Stage 0 holds from the start of the run.
 */
export type DemandTable = {
  readonly kind: 'planned' | 'open' | 'constant'
  readonly stageCount: number
  readonly from_s: Float64Array
  readonly flow_gpm: Float64Array
  readonly siteFlow_gpm: Float64Array
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
}

/** Where in the event queue each entity stands; also the order in which simultaneous events happen. */
export type EntityTable = {
  readonly count: number
  readonly demand: number
  readonly engine: number
  readonly pumpers: number
  readonly dumps: number
  readonly fills: number
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
  readonly slots: SlotTable
  readonly entities: EntityTable
  readonly demand: DemandTable
  readonly chance: ChanceTable | undefined
  /** The state before anything happened, copied by `begin`. */
  readonly start: SimState
}
