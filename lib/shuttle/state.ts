/**
 * All that changes in a run, as views on one buffer: copying the buffer is copying the run.
 *
 * Volumes are exact at the moment named in the site's `*Since_s` and move in a straight
 * line from there at the rates held beside them.
 */
export type SimState = {
  readonly buffer: ArrayBuffer
  readonly bytes: Uint8Array
  readonly clock_s: Float64Array
  /** The run stops itself here (named runs only). */
  readonly end_s: Float64Array
  /** Event queue: time of the next event of each entity, and its rank among simultaneous ones. */
  readonly next_s: Float64Array
  readonly rank: Float64Array
  readonly sequence: Float64Array

  readonly phase: Int32Array
  /** Site the tender is at or on its way to, counted over dump sites, then fill sites. */
  readonly place: Int32Array
  readonly slot: Int32Array
  readonly part: Int32Array
  /** Loads dumped. */
  readonly rounds: Int32Array
  /** Bays taken so far, the count of chance at the fill site. */
  readonly filled: Int32Array
  readonly phaseSince_s: Float64Array
  readonly ticket: Float64Array
  readonly load_gal: Float64Array
  /** Rate of dumping or filling now. */
  readonly rate_gpm: Float64Array
  /** Factor of chance on the rate of this dumping or filling. */
  readonly pace: Float64Array
  readonly waitedToDump_s: Float64Array
  readonly waitedToFill_s: Float64Array
  readonly given_gal: Float64Array
  readonly left_s: Float64Array
  readonly waitedOnRoad_s: Float64Array
  /** In the shuttle since, or since its last break. */
  readonly restedAt_s: Float64Array
  /** Way it drives or last drove, counted among its own. */
  readonly way: Int32Array

  /** Room to reckon in while a tender chooses; means nothing between events. */
  readonly freeAt_s: Float64Array
  readonly isCounted: Int32Array

  /** Vehicles in each one-lane stretch, and whether they are loaded. */
  readonly laneInside: Int32Array
  readonly laneLoaded: Int32Array
  /** Waiting at each stretch: empty at 2 · lane, loaded at 2 · lane + 1. */
  readonly laneWaiting: Int32Array

  readonly open: Int32Array
  readonly waiting: Int32Array
  /** Tender in each place; `FREE` or `CLOSED` else. */
  readonly slotTender: Int32Array
  readonly slotSince_s: Float64Array
  readonly slotBusy_s: Float64Array
  /** Late places opened so far. */
  readonly opened: Int32Array

  readonly pumper: Int32Array
  readonly full: Int32Array
  readonly finished: Int32Array
  readonly losses: Int32Array
  readonly dumpSince_s: Float64Array
  readonly level_gal: Float64Array
  readonly target_gal: Float64Array
  /** From tenders. */
  readonly in_gpm: Float64Array
  /** Into the tanks the pumper drafts from: the same, or what comes over from those in front. */
  readonly enter_gpm: Float64Array
  readonly leak_gpm: Float64Array
  /** Water in the tanks in front. */
  readonly front_gal: Float64Array
  readonly spill_gpm: Float64Array
  readonly out_gpm: Float64Array
  readonly boosterOut_gpm: Float64Array
  readonly booster_gal: Float64Array
  readonly reprimed_s: Float64Array
  readonly supplyReady_s: Float64Array
  readonly received_gal: Float64Array
  readonly spilled_gal: Float64Array
  readonly pumped_gal: Float64Array
  readonly heldBack_s: Float64Array
  readonly pumping_s: Float64Array
  readonly lost_s: Float64Array
  readonly lowest_gal: Float64Array
  readonly lowest_s: Float64Array

  readonly filling: Int32Array
  readonly dry: Int32Array
  readonly fillSince_s: Float64Array
  readonly source_gal: Float64Array
  readonly draw_gpm: Float64Array
  readonly drawn_gal: Float64Array
  readonly filling_s: Float64Array
  readonly dry_s: Float64Array
  /** When the source first ran dry. */
  readonly dryFrom_s: Float64Array

  /** What each hose lay could bring into its site now, what it does bring, and what it has brought, to the fire ground too. */
  readonly feed_gpm: Float64Array
  readonly feedRate_gpm: Float64Array
  readonly fed_gal: Float64Array
  /** Steps of hose lays taken so far. */
  readonly feedStep: Int32Array

  /** Water of each shared source, exact at `poolSince_s`; whether it has run dry, when, and the set of those dry that feed the fire ground. */
  readonly pool_gal: Float64Array
  readonly poolSince_s: Float64Array
  readonly poolDryFrom_s: Float64Array
  readonly poolDry: Int32Array
  readonly variant: Int32Array

  readonly stage: Int32Array
  readonly engine: Int32Array
  readonly isFireDue: Int32Array
  /** Single figures of the fire ground, by `FIRE`. */
  readonly fire: Float64Array
}

/** Places in `SimState.fire`. Times not reached yet are Infinity. */
export const FIRE = {
  since_s: 0,
  flow_gpm: 1,
  engine_gal: 2,
  engineOut_gpm: 3,
  delivered_gal: 4,
  demanded_gal: 5,
  isShort: 6,
  shortSinceArrival_s: 7,
  shortSinceReady_s: 8,
  firstWater_s: 9,
  engineEmpty_s: 10,
  allReady_s: 11,
  initial_gal: 12,
} as const
/** How many there are. */
export const FIRE_SIZE = 13

/** Row of the demand that holds now: its stage, and the shared sources run dry. */
export const rowOf = ({ stageCount }: { readonly stageCount: number }, { stage, variant }: SimState): number => stage[0]! + variant[0]! * stageCount

/** What `slotTender` says of a place without a tender. */
export const FREE = -1
export const CLOSED = -2
