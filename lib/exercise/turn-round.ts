import { arriveAt, PHASE, type Scenario, type SimState } from '../shuttle'
import { isNever, meetsAt, NEVER_S, waysNow, type Closure } from './closures'
import type { World } from './world'

const drives = new Set<number>([PHASE.drivesToFill, PHASE.drivesToDump])

/** A tender between two sites, and where it came from. */
export type Trip = { readonly id: string; readonly isLoaded: boolean; readonly fromId: string; readonly toId: string; readonly whole_s: number }

/** The trip that tender `i` is on; undefined where it is on none, or has been sent elsewhere while on it. */
export function findTrip({ spec, tenders }: Scenario, state: SimState, i: number): Trip | undefined {
  const phase = state.phase[i]!
  if (!drives.has(phase) && phase !== PHASE.waitsAtRoad) return undefined
  const row = tenders.wayFrom[i]! + state.way[i]!
  const place = state.place[i]!
  const isLoaded = place < spec.dumps.length
  const [dump, fill] = [tenders.ways.dump[row]!, tenders.ways.fill[row]!]
  if (isLoaded ? dump !== place : spec.dumps.length + fill !== place) return undefined
  const [dumpId, fillId] = [spec.dumps[dump]!.id, spec.fills[fill]!.id]
  return {
    id: spec.tenders[i]!.id, isLoaded, fromId: isLoaded ? fillId : dumpId, toId: isLoaded ? dumpId : fillId,
    whole_s: isLoaded ? tenders.ways.toDump_s[row]! : tenders.ways.toFill_s[row]!,
  }
}

/**
 * Tenders on a road at the moment it is closed. Who has passed the closed place goes on. Who is short of it turns round where it is,
 * drives back to where it set off, and takes the way round from there: later than it would be, never sooner. Who has no way round
 * stands where it set off.
 *
 * @param state carried over to `scenario`, changed in place
 */
export function turnRound(before: World, was: { readonly scenario: Scenario; readonly state: SimState }, scenario: Scenario, state: SimState, closure: Closure): void {
  const now_s = state.clock_s[0]!
  const way = waysNow(before.bundle, before.conditions)
  was.scenario.spec.tenders.forEach(({ id }, source) => {
    const i = scenario.spec.tenders.findIndex((one) => one.id === id)
    const trip = findTrip(was.scenario, was.state, source)
    if (i < 0 || !trip || !drives.has(state.phase[i]!)) return
    const on = way(id, trip.fromId, trip.toId)
    const path = on.kind === 'round' ? on.detour.path : on.kind === 'planned' ? on.path : undefined
    const met = path && meetsAt(path, [closure])
    const driven_s = Math.max(0, trip.whole_s - Math.max(0, state.next_s[i]! - now_s))
    if (met === undefined || driven_s > met * trip.whole_s) return
    const round_s = timeOf(scenario, i, trip)
    if (round_s !== undefined) arriveAt(scenario, state, i, isNever(round_s) ? NEVER_S : now_s + driven_s + round_s)
  })
}

/** Tenders that stood for want of a way set off when there is one, or when they are sent elsewhere. */
export function setOffAgain(scenario: Scenario, state: SimState): void {
  const { spec, tenders } = scenario
  spec.tenders.forEach((_, i) => {
    if (!drives.has(state.phase[i]!) || !isNever(state.next_s[i]!)) return
    const row = tenders.wayFrom[i]! + state.way[i]!
    const isLoaded = state.phase[i] === PHASE.drivesToDump
    const whole_s = isLoaded ? tenders.ways.toDump_s[row]! : tenders.ways.toFill_s[row]!
    const place = isLoaded ? tenders.ways.dump[row]! : spec.dumps.length + tenders.ways.fill[row]!
    if (!isNever(whole_s)) arriveAt(scenario, state, i, state.clock_s[0]! + whole_s, place)
  })
}

/** What a tender's trip takes under a scenario; undefined where it drives there no more. */
function timeOf({ spec, tenders }: Scenario, i: number, { isLoaded, fromId, toId }: Trip): number | undefined {
  const [dumpId, fillId] = isLoaded ? [toId, fromId] : [fromId, toId]
  for (let row = tenders.wayFrom[i]!; row < tenders.wayFrom[i]! + tenders.wayCount[i]!; row++) {
    if (spec.dumps[tenders.ways.dump[row]!]?.id === dumpId && spec.fills[tenders.ways.fill[row]!]?.id === fillId) return isLoaded ? tenders.ways.toDump_s[row]! : tenders.ways.toFill_s[row]!
  }
  return undefined
}
