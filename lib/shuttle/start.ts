import { PHASE } from './phase'
import type { Scenario } from './scenario'
import { CLOSED, FIRE, FREE, type SimState } from './state'
import { stateOn } from './state-layout'

/** Ranks of simultaneous events: class of entity first, then the order in which they were set. */
const RANK_CLASS = 2 ** 44

/** The state of a scenario before anything happened; its demand is filled in by `begin`. */
export function startOf(scenario: Omit<Scenario, 'start'>): SimState {
  const { tenders, dumps, fills, slots, pools, entities } = scenario
  const state = stateOn({
    tenders: tenders.count, dumps: dumps.count, fills: fills.count, slots: slots.count, lanes: scenario.laneCount, feeds: scenario.feeds.count, pools: scenario.pools.count, entities: entities.count,
  })
  state.end_s[0] = Infinity
  state.next_s.fill(Infinity)
  for (let i = 0; i < entities.count; i++) state.rank[i] = i < entities.demand ? i : i * RANK_CLASS
  state.sequence[0] = tenders.count
  state.slotTender.fill(FREE)
  for (const { slot } of slots.late) state.slotTender[slot] = CLOSED
  if (slots.late[0]) state.next_s[entities.places] = slots.late[0].from_s
  if (scenario.feeds.steps[0]) state.next_s[entities.feeds] = scenario.feeds.steps[0].at_s
  state.slot.fill(-1)
  state.left_s.fill(Infinity)
  state.dryFrom_s.fill(Infinity)
  state.pool_gal.set(pools.usable_gal)
  state.poolDryFrom_s.fill(Infinity)
  let aboard_gal = 0
  for (let i = 0; i < tenders.count; i++) {
    state.phase[i] = PHASE.coming
    state.place[i] = tenders.dump[i]!
    state.next_s[i] = tenders.arrive_s[i]!
    state.pace[i] = 1
    if (tenders.arrive_s[i]! === Infinity) continue
    state.load_gal[i] = tenders.load_gal[i]!
    aboard_gal += tenders.load_gal[i]!
  }
  let boosters_gal = 0
  let stored_gal = 0
  for (let d = 0; d < dumps.count; d++) {
    state.next_s[entities.dumps + d] = dumps.ready_s[d]!
    state.next_s[entities.pumpers + d] = dumps.pumpReady_s[d]!
    state.booster_gal[d] = dumps.booster_gal[d]!
    boosters_gal += dumps.booster_gal[d]!
    state.level_gal[d] = dumps.initial_gal[d]!
    stored_gal += dumps.initial_gal[d]!
    state.target_gal[d] = Infinity
    state.reprimed_s[d] = Infinity
    state.supplyReady_s[d] = Infinity
    state.lowest_gal[d] = Infinity
    state.lowest_s[d] = Infinity
  }
  for (let f = 0; f < fills.count; f++) {
    state.next_s[entities.fills + f] = fills.ready_s[f]!
    const pool = pools.ofFill[f]!
    state.source_gal[f] = pool < 0 ? fills.usable_gal[f]! : pools.usable_gal[pool]!
  }
  state.fire[FIRE.firstWater_s] = Infinity
  state.fire[FIRE.engineEmpty_s] = Infinity
  state.fire[FIRE.allReady_s] = Infinity
  state.fire[FIRE.initial_gal] = aboard_gal + boosters_gal + stored_gal
  return state
}

/**
 * The state at dispatch, time 0.
 *
 * @param into a state of the same tables to write over, for runs by the thousand
 */
export function begin(scenario: Scenario, into?: SimState): SimState {
  const { start, demand, entities } = scenario
  const state = into ?? stateOn({
    tenders: scenario.tenders.count, dumps: scenario.dumps.count, fills: scenario.fills.count,
    slots: scenario.slots.count, lanes: scenario.laneCount, feeds: scenario.feeds.count, pools: scenario.pools.count, entities: entities.count,
  })
  state.bytes.set(start.bytes)
  state.next_s[entities.demand] = demand.stageCount > 1 ? demand.from_s[1]! : Infinity
  state.next_s[entities.engine] = demand.engineArrive_s
  state.fire[FIRE.engine_gal] = demand.engineTank_gal
  state.fire[FIRE.initial_gal] = start.fire[FIRE.initial_gal]! + demand.engineTank_gal
  return state
}
