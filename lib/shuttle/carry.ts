import { carryFeeds, feedsInto } from './carry-feeds'
import { carryPools, poolKey, variantFor } from './carry-pools'
import { carryRoads } from './carry-roads'
import { carryTenders, seatTenders } from './carry-tenders'
import { admitWaiting } from './drive'
import { replanDump, syncDump } from './dump-site'
import { replanFill, replanPool, syncFill } from './fill-site'
import { syncFire, takeUpFire } from './fire-ground'
import { ENGINE, PHASE, PUMPER } from './phase'
import type { Scenario } from './scenario'
import { admitNext } from './site-places'
import { begin } from './start'
import { CLOSED, FIRE, FREE, type SimState } from './state'
import { fork } from './state-layout'
import { openNextBay } from './tender-fills'

/** For each item of `to` its index in `from`, -1 when it is new. */
function indexesById(from: readonly { readonly id: string }[], to: readonly { readonly id: string }[]): number[] {
  return to.map(({ id }) => from.findIndex((item) => item.id === id))
}

/**
 * A run goes on under a changed scenario: after a decision, an inject, a correction.
 *
 * Sites, tenders and what they carry are found again by id. A tender finishes the leg and the
 * handling it is in and follows its new assignment when it next sets off; times already running are not
 * redrawn. Where its site is no more it sets off at once for its new one. Those in positions or bays
 * that are no more go back to the head of the line. What comes new starts as at dispatch, now at the earliest.
 * Water of what is gone leaves the balance with it (`initial_gal`). A site that did not
 * change is not touched, so that carrying to the same scenario changes nothing.
 *
 * @param state stays as it is
 * @returns a new state for `to`, at the same clock
 */
export function carry(from: Scenario, state: SimState, to: Scenario): SimState {
  const now_s = state.clock_s[0]!
  const old = fork(state)
  const next = begin(to)
  const dumpFrom = indexesById(from.spec.dumps, to.spec.dumps)
  const fillFrom = indexesById(from.spec.fills, to.spec.fills)
  const tenderFrom = indexesById(from.spec.tenders, to.spec.tenders)
  for (let i = 0; i < to.entities.count; i++) if (next.next_s[i]! < now_s) next.next_s[i] = now_s
  next.clock_s[0] = now_s
  next.sequence[0] = Math.max(old.sequence[0]!, to.tenders.count)

  const stage = stageAt(to, now_s)
  const hasDemandMoved = !isSameDemand(from, old.stage[0]!, old.variant[0]!, to, stage, variantFor(from, old, to))
  const changedDumps = to.spec.dumps.map((dump, d) => hasDemandMoved
    || !isSame(dump, from.spec.dumps[dumpFrom[d]!]) || feedsInto(from, 'dumpIndex', dumpFrom[d]!) !== feedsInto(to, 'dumpIndex', d) || haveOccupantsChanged(from, old, dumpFrom[d]!, to))
  const changedFills = to.spec.fills.map((fill, f) =>
    !isSame(fill, from.spec.fills[fillFrom[f]!]) || poolKey(to, to.pools.ofFill[f]!) !== poolKey(from, fillFrom[f]! < 0 ? -1 : from.pools.ofFill[fillFrom[f]!]!) || feedsInto(from, 'fillIndex', fillFrom[f]!) !== feedsInto(to, 'fillIndex', f) || haveOccupantsChanged(from, old, fillFrom[f]! < 0 ? -1 : from.dumps.count + fillFrom[f]!, to))
  // Whatever changes, or is left behind, is brought up to the clock under the old rules first.
  from.spec.dumps.forEach((_, d) => { if (!dumpFrom.some((source, k) => source === d && !changedDumps[k])) syncDump(from, old, d, now_s) })
  from.spec.fills.forEach((_, f) => { if (!fillFrom.some((source, k) => source === f && !changedFills[k])) syncFill(from, old, f, now_s) })
  if (hasDemandMoved) syncFire(from, old, now_s)

  next.fire.set(old.fire)
  next.stage[0] = stage
  next.next_s[to.entities.demand] = stage + 1 < to.demand.stageCount ? to.demand.from_s[stage + 1]! : Infinity
  carryEngine(from, old, to, next)
  dumpFrom.forEach((source, d) => carryDump(from, old, source, to, next, d))
  fillFrom.forEach((source, f) => carryFill(from, old, source, to, next, f))
  openLatePlaces(to, next)
  carryFeeds(from, old, to, next)
  const changedPools = carryPools(from, old, to, next)
  leaveSites(from, old, dumpFrom, fillFrom, next)
  carryTenders(from, old, tenderFrom, to, next)
  seatTenders(from, old, tenderFrom, dumpFrom, fillFrom, to, next)
  carryRoads(from, old, tenderFrom, to, next)
  next.fire[FIRE.allReady_s] = allReadyAt(to, next)
  next.end_s[0] = next.fire[FIRE.allReady_s]! + to.demand.afterReady_s

  for (let site = 0; site < to.dumps.count + to.fills.count; site++) {
    for (let slot = to.slots.from[site]!; slot < to.slots.upTo[site]!; slot++) {
      if (next.open[site] && next.slotTender[slot] === FREE) admitNext(to, next, site, slot, now_s, undefined)
    }
  }
  changedDumps.forEach((isChanged, d) => {
    if (!isChanged) return
    next.dumpSince_s[d] = now_s
    forgetRates(to, next, d)
    replanDump(to, next, d, now_s, undefined)
  })
  changedFills.forEach((isChanged, f) => {
    if (!isChanged) return
    next.fillSince_s[f] = now_s
    forgetRates(to, next, to.dumps.count + f)
    replanFill(to, next, f, now_s, undefined)
    openNextBay(to, next, f, now_s, undefined)
  })
  for (const pool of changedPools) replanPool(to, next, pool, now_s, undefined)
  for (let lane = 0; lane < to.laneCount; lane++) if (next.laneInside[lane] === 0) admitWaiting(to, next, lane, now_s, undefined)
  if (hasDemandMoved || next.isFireDue[0] !== 0) takeUpFire(to, next, now_s, undefined)
  return next
}

/** So that those with water running are planned anew. */
function forgetRates(to: Scenario, next: SimState, site: number): void {
  for (let i = 0; i < to.tenders.count; i++) {
    if (next.place[i] === site && (next.phase[i] === PHASE.dumps || next.phase[i] === PHASE.fills)) next.rate_gpm[i] = -1
  }
}

const isSame = (a: unknown, b: unknown): boolean => a === b || JSON.stringify(a) === JSON.stringify(b)

function stageAt(scenario: Scenario, now_s: number): number {
  let stage = 0
  while (stage + 1 < scenario.demand.stageCount && scenario.demand.from_s[stage + 1]! <= now_s) stage++
  return stage
}

/** What holds now and who carries it; later stages are read when they come. */
function isSameDemand(from: Scenario, fromStage: number, fromVariant: number, to: Scenario, toStage: number, toVariant: number): boolean {
  const key = ({ demand, spec }: Scenario, stage: number, variant: number) => {
    const at = stage + variant * demand.stageCount
    const direct = spec.feeds ? [...demand.direct_gpm.subarray(at * spec.feeds.length, (at + 1) * spec.feeds.length)] : []
    const row = (table: Float64Array) => [...table.subarray(at * spec.dumps.length, (at + 1) * spec.dumps.length)]
    return [
      spec.dumps.map(({ id, demandShare }) => [id, demandShare]), demand.kind, demand.flow_gpm[stage], demand.engineArrive_s, demand.engineTank_gal,
      row(demand.siteFlow_gpm), row(demand.limit_gal), row(demand.reserve_gal), row(demand.restart_gal), demand.countFrom_s, direct,
    ]
  }
  return isSame(key(from, fromStage, fromVariant), key(to, toStage, toVariant))
}

/** Whether anyone in a position or bay of the old site is gone or has other numbers now. */
function haveOccupantsChanged(from: Scenario, old: SimState, site: number, to: Scenario): boolean {
  if (site < 0) return true
  for (let slot = from.slots.from[site]!; slot < from.slots.upTo[site]!; slot++) {
    const i = old.slotTender[slot]!
    if (i < 0) continue
    const tender = from.spec.tenders[i]!
    if (!isSame(tender, to.spec.tenders.find(({ id }) => id === tender.id))) return true
  }
  return false
}

function carryEngine(from: Scenario, old: SimState, to: Scenario, next: SimState): void {
  next.engine[0] = old.engine[0]!
  if (old.engine[0] === ENGINE.coming) {
    next.fire[FIRE.engine_gal] = to.demand.engineTank_gal
    next.fire[FIRE.initial_gal] = old.fire[FIRE.initial_gal]! + (to.demand.engineTank_gal - from.demand.engineTank_gal)
  } else {
    next.next_s[to.entities.engine] = old.next_s[from.entities.engine]!
  }
}

function addInitial(state: SimState, water_gal: number): void {
  state.fire[FIRE.initial_gal] = state.fire[FIRE.initial_gal]! + water_gal
}

function carryDump(from: Scenario, old: SimState, source: number, to: Scenario, next: SimState, d: number): void {
  if (source < 0) {
    addInitial(next, to.dumps.booster_gal[d]! + to.dumps.initial_gal[d]!)
    next.dumpSince_s[d] = next.clock_s[0]!
    return
  }
  const floats = [
    'dumpSince_s', 'level_gal', 'target_gal', 'in_gpm', 'enter_gpm', 'leak_gpm', 'front_gal', 'spill_gpm', 'out_gpm', 'boosterOut_gpm', 'booster_gal', 'reprimed_s', 'supplyReady_s',
    'received_gal', 'spilled_gal', 'pumped_gal', 'heldBack_s', 'pumping_s', 'lost_s', 'lowest_gal', 'lowest_s',
  ] as const
  for (const field of floats) next[field][d] = old[field][source]!
  for (const field of ['pumper', 'full', 'finished', 'losses', 'open'] as const) next[field][d] = old[field][source]!
  if (old.open[source]) next.next_s[to.entities.dumps + d] = old.next_s[from.entities.dumps + source]!
  if (old.pumper[source] !== PUMPER.setsUp) next.next_s[to.entities.pumpers + d] = old.next_s[from.entities.pumpers + source]!
  // What no longer has room in front goes to the tanks behind, as far as they hold it.
  const moved_gal = next.front_gal[d]! - to.dumps.front_gal[d]!
  if (moved_gal > 0) {
    next.front_gal[d] = to.dumps.front_gal[d]!
    next.level_gal[d] = next.level_gal[d]! + moved_gal
  }
  const lost_gal = next.level_gal[d]! - to.demand.lip_gal[d]!
  if (lost_gal > 0) {
    next.level_gal[d] = to.demand.lip_gal[d]!
    next.spilled_gal[d] = next.spilled_gal[d]! + lost_gal
  }
}

function carryFill(from: Scenario, old: SimState, source: number, to: Scenario, next: SimState, f: number): void {
  const toSite = to.dumps.count + f
  if (source < 0) {
    next.fillSince_s[f] = next.clock_s[0]!
    return
  }
  const fromSite = from.dumps.count + source
  for (const field of ['fillSince_s', 'draw_gpm', 'drawn_gal', 'filling_s', 'dry_s', 'dryFrom_s'] as const) next[field][f] = old[field][source]!
  next.dry[f] = old.dry[source]!
  next.open[toSite] = old.open[fromSite]!
  if (old.open[fromSite]) next.next_s[to.entities.fills + f] = old.next_s[from.entities.fills + source]!
  const before_gal = from.fills.usable_gal[source]!
  const after_gal = to.fills.usable_gal[f]!
  // A corrected volume shifts what is left by the correction.
  if (before_gal !== Infinity && after_gal !== Infinity) next.source_gal[f] = Math.max(0, old.source_gal[source]! + (after_gal - before_gal))
}

/** Places whose time has come are open; the next ones are waited for. */
function openLatePlaces(to: Scenario, next: SimState): void {
  const { late } = to.slots
  const now_s = next.clock_s[0]!
  const opened = late.filter(({ from_s }) => from_s <= now_s).length
  late.forEach(({ slot }, k) => { next.slotTender[slot] = k < opened ? FREE : CLOSED })
  next.opened[0] = opened
  if (late.length > 0) next.next_s[to.entities.places] = late[opened]?.from_s ?? Infinity
}

/** What was drawn, spilled or stored at sites that are no more goes out of the sums together with them. */
function leaveSites(from: Scenario, old: SimState, dumpFrom: readonly number[], fillFrom: readonly number[], next: SimState): void {
  from.spec.dumps.forEach((_, d) => {
    if (!dumpFrom.includes(d)) addInitial(next, -(old.level_gal[d]! + old.front_gal[d]! + old.booster_gal[d]! + old.spilled_gal[d]!))
  })
  from.spec.fills.forEach((_, f) => { if (!fillFrom.includes(f)) addInitial(next, old.drawn_gal[f]!) })
}

function allReadyAt(to: Scenario, next: SimState): number {
  let latest_s = -Infinity
  for (let d = 0; d < to.dumps.count; d++) if (to.dumps.share[d]! > 0) latest_s = Math.max(latest_s, next.supplyReady_s[d]!)
  return latest_s
}
