import { FIRE_SIZE, type SimState } from './state'

export type StateSize = { tenders: number; dumps: number; fills: number; slots: number; lanes: number; feeds: number; pools: number; entities: number }

type Maker = { floats: (count: number) => Float64Array; ints: (count: number) => Int32Array }

function viewsFrom(make: Maker, buffer: ArrayBuffer, size: StateSize): SimState {
  const { tenders: t, dumps: d, fills: f, slots, lanes, feeds, pools, entities } = size
  return {
    buffer,
    bytes: new Uint8Array(buffer),
    clock_s: make.floats(1),
    end_s: make.floats(1),
    next_s: make.floats(entities),
    rank: make.floats(entities),
    sequence: make.floats(1),
    phaseSince_s: make.floats(t),
    ticket: make.floats(t),
    load_gal: make.floats(t),
    rate_gpm: make.floats(t),
    pace: make.floats(t),
    waitedToDump_s: make.floats(t),
    waitedToFill_s: make.floats(t),
    given_gal: make.floats(t),
    left_s: make.floats(t),
    waitedOnRoad_s: make.floats(t),
    restedAt_s: make.floats(t),
    slotSince_s: make.floats(slots),
    slotBusy_s: make.floats(slots),
    freeAt_s: make.floats(slots),
    dumpSince_s: make.floats(d),
    level_gal: make.floats(d),
    target_gal: make.floats(d),
    in_gpm: make.floats(d),
    enter_gpm: make.floats(d),
    leak_gpm: make.floats(d),
    front_gal: make.floats(d),
    spill_gpm: make.floats(d),
    out_gpm: make.floats(d),
    boosterOut_gpm: make.floats(d),
    booster_gal: make.floats(d),
    reprimed_s: make.floats(d),
    supplyReady_s: make.floats(d),
    received_gal: make.floats(d),
    spilled_gal: make.floats(d),
    pumped_gal: make.floats(d),
    heldBack_s: make.floats(d),
    pumping_s: make.floats(d),
    lost_s: make.floats(d),
    lowest_gal: make.floats(d),
    lowest_s: make.floats(d),
    fillSince_s: make.floats(f),
    source_gal: make.floats(f),
    draw_gpm: make.floats(f),
    drawn_gal: make.floats(f),
    filling_s: make.floats(f),
    dry_s: make.floats(f),
    dryFrom_s: make.floats(f),
    feed_gpm: make.floats(feeds),
    feedRate_gpm: make.floats(feeds),
    fed_gal: make.floats(feeds),
    pool_gal: make.floats(pools),
    poolSince_s: make.floats(pools),
    poolDryFrom_s: make.floats(pools),
    fire: make.floats(FIRE_SIZE),
    phase: make.ints(t),
    place: make.ints(t),
    slot: make.ints(t),
    part: make.ints(t),
    rounds: make.ints(t),
    filled: make.ints(t),
    way: make.ints(t),
    isCounted: make.ints(t),
    laneInside: make.ints(lanes),
    laneLoaded: make.ints(lanes),
    laneWaiting: make.ints(2 * lanes),
    opened: make.ints(1),
    open: make.ints(d + f),
    waiting: make.ints(d + f),
    slotTender: make.ints(slots),
    pumper: make.ints(d),
    full: make.ints(d),
    finished: make.ints(d),
    losses: make.ints(d),
    filling: make.ints(f),
    dry: make.ints(f),
    feedStep: make.ints(1),
    poolDry: make.ints(pools),
    variant: make.ints(1),
    stage: make.ints(1),
    engine: make.ints(1),
    isFireDue: make.ints(1),
  }
}

const NO_FLOATS = new Float64Array(0)
const NO_INTS = new Int32Array(0)

/** Views on a buffer laid out for a size; a new zeroed buffer when none is given. */
export function stateOn(size: StateSize, buffer?: ArrayBuffer): SimState {
  let bytes = 0
  const measure: Maker = {
    floats: (count) => { bytes += 8 * count; return NO_FLOATS },
    ints: (count) => { bytes += 4 * count; return NO_INTS },
  }
  if (!buffer) {
    viewsFrom(measure, new ArrayBuffer(0), size)
    buffer = new ArrayBuffer(bytes)
  }
  const home = buffer
  let at = 0
  return viewsFrom({
    floats: (count) => { const view = new Float64Array(home, at, count); at += 8 * count; return view },
    ints: (count) => { const view = new Int32Array(home, at, count); at += 4 * count; return view },
  }, home, size)
}

/** Size a state was laid out for. */
function sizeOf(state: SimState): StateSize {
  return {
    tenders: state.phase.length,
    dumps: state.level_gal.length,
    fills: state.source_gal.length,
    slots: state.slotTender.length,
    lanes: state.laneInside.length,
    feeds: state.feed_gpm.length,
    pools: state.pool_gal.length,
    entities: state.next_s.length,
  }
}

/** A copy that runs on its own from here. */
export function fork(state: SimState): SimState {
  return stateOn(sizeOf(state), state.buffer.slice(0))
}
