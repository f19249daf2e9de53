/**
 * What the shuttle is told: numbers and indexes only, nothing of plans or maps.
 * `compileShuttle` checks it and turns it into immutable tables. All times are seconds
 * from dispatch, all volumes US gallons, all rates gpm.
 */
export type ShuttleSpec = {
  /** Addresses of chance; a spec without spread runs the same for every seed. */
  readonly seed: number
  /** No run goes past this; supply that is not ready by then never is. */
  readonly horizon_s: number
  /** How long after supply is ready a named run lasts, inside the horizon. Default 7,200. */
  readonly afterReady_s?: number
  readonly fills: readonly FillSpec[]
  readonly dumps: readonly DumpSpec[]
  readonly tenders: readonly TenderSpec[]
  /** Stretches of road wide enough for one vehicle, between passing places. */
  readonly lanes?: readonly LaneSpec[]
  /** Water that comes by hose beside the tenders. */
  readonly feeds?: readonly FeedSpec[]
  readonly demand: DemandSpec
}

/**
 * A one-lane stretch: vehicles of one direction at a time, one behind the other. Loaded tenders have
 * the right of way: while one waits no empty one goes in.
 */
export type LaneSpec = { readonly id: string }

/** One-lane stretch on a way, from and up to a share of the way's time, 0 to 1. */
export type LanePass = { readonly laneIndex: number; readonly fromShare: number; readonly upToShare: number }

/** One-lane stretches of a way, in the order in which each direction meets them, without overlap. */
export type WayLanes = { readonly lanesToFill?: readonly LanePass[]; readonly lanesToDump?: readonly LanePass[] }

/**
 * Water that a hose lay brings from a source of its own, from the moment it stands: into the tanks of a dump site, into the tenders
 * at a fill site, or straight to the fire ground where neither is named.
 */
export type FeedSpec = {
  readonly id: string
  readonly dumpIndex?: number
  readonly fillIndex?: number
  /** Laid, charged and at its flow. */
  readonly ready_s: number
  readonly flow_gpm: number
  /** What its source holds when it stands, or at the start where others draw on it too; absent: does not run out. */
  readonly usable_gal?: number
  /** What runs into that source while it is drawn on. */
  readonly inflow_gpm?: number
  /** Its source: fill sites and lays that name the same one share its water. Absent: nobody else draws on it. */
  readonly sourceId?: string
}

/** A pair of sites a tender may drive between, with its times each way. */
export type WaySpec = WayLanes & {
  readonly dumpIndex: number
  readonly fillIndex: number
  readonly toFill_s: number
  readonly toDump_s: number
}

/** A place where tenders take water, with one or more bays fed by one pump. */
export type FillSpec = {
  readonly id: string
  /** First moment a tender can be hooked up: pumper arrived, set up, staffed, primed. */
  readonly ready_s: number
  readonly bayCount: number
  /** Rate into each tender, by how many bays are filling: index 0 is one bay. Length is `bayCount`. */
  readonly bayRate_gpm: readonly number[]
  /** How long after `ready_s` each bay opens, where people come one after the other. Absent: all at once. */
  readonly bayAfter_s?: readonly number[]
  /** Bays that flow at once; others stand hooked up until it is their turn ("connect two, fill one"). Absent: all. */
  readonly flowingBayCount?: number
  /** What the source holds above the strainer at the start; absent: does not run out. */
  readonly usable_gal?: number
  /** What runs into the source while it is drawn on; it never rises above `usable_gal`. */
  readonly inflow_gpm?: number
  /** Its source: fill sites and lays that name the same one share its water. Absent: nobody else draws on it. */
  readonly sourceId?: string
  /** Chance: how much longer than planned the filling may take. Absent: never. */
  readonly spread?: { readonly fill?: Spread }
}

/** A place where tenders give water, with one set of portable tanks and one pumper drafting from it. */
export type DumpSpec = {
  readonly id: string
  /** First moment a tender may move into a dump position: tank set, people there. */
  readonly ready_s: number
  /** First moment the pumper there can send water on: drafting and line to the attack charged. Not before `ready_s`. */
  readonly pumpReady_s: number
  /** Tenders that can dump at once. */
  readonly positionCount: number
  /** How long after `ready_s` each position opens, where people come one after the other. Absent: all at once. */
  readonly positionAfter_s?: readonly number[]
  /** Water the tanks hold to their lip; with a `front`, those the pumper drafts from. */
  readonly capacity_gal: number
  /** Tanks that tenders dump into and from which water goes over to those the pumper drafts from. */
  readonly front?: FrontTank
  /** The tanks the pumper drafts from hold all they can from the start, such as a nurse tender that came full. */
  readonly startsFull?: boolean
  /** Most the site takes from tenders together, such as the fill lines of a nurse tender. Absent: what they give. */
  readonly intakeLimit_gpm?: number
  /** What runs out of the tank the pumper drafts from while there is any in it; counts as spilled. */
  readonly leak_gpm?: number
  /** Below this the pumper loses its draft, by flow: volume left in the tanks at h_min(Q). Linear between points, sorted by flow. */
  readonly draftLimit: readonly { readonly flow_gpm: number; readonly volume_gal: number }[]
  /** Time to get the draft back once there is water again. */
  readonly reprime_s: number
  /** Water again means: this much time of flow above the draft limit, or full tanks. Default 30. */
  readonly restartMargin_s?: number
  /** The pumper's own tank, which feeds the fire ground while the draft is lost; used once. */
  readonly booster_gal: number
  /** Share of the demand this site carries; shares of all sites sum to 1. */
  readonly demandShare: number
}

export type FrontTank = {
  readonly capacity_gal: number
  /** Most that goes over, by jet siphon or by gravity, while there is water in front and room behind. */
  readonly transfer_gpm: number
}

export type TenderSpec = WayLanes & {
  readonly id: string
  /** Water aboard when full and given at each dump. */
  readonly usable_gal: number
  /** Arrives at its dump site, full, for the first time. Absent: never comes. */
  readonly arrive_s?: number
  /** Leaves the shuttle after the dump that ends at or after this time. */
  readonly withdraw_s?: number
  readonly dumpIndex: number
  readonly fillIndex: number
  readonly toFill_s: number
  readonly toDump_s: number
  /**
   * Pairs of sites to choose from at every departure, by the least expected time; ties go to the first. One of them
   * has this tender's `dumpIndex`, where it arrives first. Absent: always its own two sites.
   */
  readonly ways?: readonly WaySpec[]
  /** A break after the first dump that ends this long after its arrival or its last break. Absent: none. */
  readonly rest?: { readonly after_s: number; readonly break_s: number }
  /** Into a dump position: back in or drive through, chocks, open. */
  readonly dumpPosition_s: number
  /** Close, chocks, out of the position. */
  readonly dumpClear_s: number
  /** Dump rate by equal parts of the load, first part first; one number is a constant rate. */
  readonly dumpRate_gpm: readonly number[]
  /** Part of what is dumped that misses the tank, below 1. Default 0. */
  readonly spillShare?: number
  /** Into the bay and hooked up. */
  readonly fillPosition_s: number
  /** Unhook and out of the bay. */
  readonly fillClear_s: number
  /** Most the tender takes, whatever the bay offers. */
  readonly fillLimit_gpm: number
  /** The last part of the filling is slow: this share of the load at this share of the rate. */
  readonly topUpShare: number
  readonly topUpRateShare: number
  /** Chance: how much longer than planned each stage of a round may take. Absent: never. */
  readonly spread?: { readonly [S in TripStage]?: Spread }
  /** What is known of single trips, such as from a log: how much longer than planned each stage took. Absent: as planned. */
  readonly tripFactors?: { readonly [S in TripStage]?: TripFactors }
}

/** Factors on the planned time of a stage, trip by trip; `then` is that of every trip after those. */
export type TripFactors = { readonly each: readonly number[]; readonly then: number }

export type DemandSpec = {
  /** Flow asked for at the fire ground from each time on, sorted by time. Before the first: nothing. */
  readonly stages: readonly { readonly from_s: number; readonly flow_gpm: number }[]
  /** The first engine at the fire: its tank feeds the demand from its arrival until it is empty or supply is ready. */
  readonly firstDue?: { readonly arrive_s: number; readonly tank_gal: number }
  /** Reserve the tanks must hold beside the draft limit before supply counts as ready, as time of flow. Default 120. */
  readonly reserve_s: number
}

/** The stages of a round, in the order of their addresses of chance. */
export const tripStages = ['dumpPosition', 'dump', 'dumpClear', 'toFill', 'fillPosition', 'fill', 'fillClear', 'toDump'] as const
export type TripStage = (typeof tripStages)[number]

/** Factors on the planned time, triangular. `night` is drawn once a run, `trip` each time; both apply. */
export type Spread = { readonly night?: SpreadRange; readonly trip?: SpreadRange }
export type SpreadRange = { readonly lowFactor: number; readonly modeFactor: number; readonly highFactor: number }
