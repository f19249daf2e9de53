import { PHASE } from './phase'
import type { Scenario } from './scenario'
import type { SimState } from './state'

const isOnRoad = (phase: number): boolean => phase === PHASE.drivesToFill || phase === PHASE.drivesToDump || phase === PHASE.waitsAtRoad

/** The passes of one-lane stretches on a way, by id, so that two scenarios can be compared. */
function passesOf(scenario: Scenario, way: number, isLoaded: boolean): { from: number; upTo: number; key: string; whole_s: number } {
  const { ways } = scenario.tenders
  const from = isLoaded ? ways.toDumpFrom[way]! : ways.toFillFrom[way]!
  const upTo = isLoaded ? ways.toDumpUpTo[way]! : ways.toFillUpTo[way]!
  const whole_s = isLoaded ? ways.toDump_s[way]! : ways.toFill_s[way]!
  const keys: string[] = []
  for (let pass = from; pass < upTo; pass++) keys.push(`${scenario.spec.lanes?.[ways.lane[pass]!]?.id} ${ways.at_s[pass]} ${ways.pass_s[pass]}`)
  return { from, upTo, whole_s, key: `${whole_s} ${keys.join()}` }
}

/** The way of its own that goes between the sites of a tender's assignment. */
export function ownWay(to: Scenario, i: number): number {
  const { tenders } = to
  const from = tenders.wayFrom[i]!
  for (let k = 0; k < tenders.wayCount[i]!; k++) {
    if (tenders.ways.dump[from + k] === tenders.dump[i] && tenders.ways.fill[from + k] === tenders.fill[i]) return k
  }
  return 0
}

/** Puts a tender past all one-lane stretches of its way: it drives on to the end without meeting any. */
export function passAllLanes(to: Scenario, next: SimState, i: number, isLoaded: boolean): void {
  const { from, upTo } = passesOf(to, to.tenders.wayFrom[i]! + next.way[i]!, isLoaded)
  next.part[i] = 2 * (upTo - from)
}

/**
 * Tenders on the road and the stretches they are in. Where a tender's way has the same stretches it goes on as it was; else it
 * drives the rest of the leg it set off on, those that waited at once, without meeting the new stretches.
 */
export function carryRoads(from: Scenario, old: SimState, tenderFrom: readonly number[], to: Scenario, next: SimState): void {
  const now_s = next.clock_s[0]!
  to.spec.lanes?.forEach(({ id }, lane) => {
    const source = from.spec.lanes?.findIndex((one) => one.id === id) ?? -1
    if (source >= 0) next.laneLoaded[lane] = old.laneLoaded[source]!
  })
  tenderFrom.forEach((source, i) => {
    if (source < 0 || !isOnRoad(next.phase[i]!) || next.phase[i] !== old.phase[source]) return
    const wasLoaded = old.place[source]! < from.dumps.count
    const isLoaded = next.place[i]! < to.dumps.count
    const before = passesOf(from, from.tenders.wayFrom[source]! + old.way[source]!, wasLoaded)
    const part = old.part[source]!
    const after = passesOf(to, to.tenders.wayFrom[i]! + next.way[i]!, isLoaded)
    if (before.key === after.key) {
      rejoin(to, next, i, after.from + (part >> 1), after.upTo, isLoaded)
      return
    }
    const { at_s, pass_s } = from.tenders.ways
    const pass = before.from + (part >> 1)
    // End of the piece it is in, in the time of its leg.
    const piece_s = pass >= before.upTo ? before.whole_s : (part & 1) === 0 ? at_s[pass]! : at_s[pass]! + pass_s[pass]!
    const rest_s = before.whole_s - piece_s
    if (next.phase[i] === PHASE.waitsAtRoad) {
      next.waitedOnRoad_s[i] = next.waitedOnRoad_s[i]! + (now_s - next.phaseSince_s[i]!)
      next.phase[i] = isLoaded ? PHASE.drivesToDump : PHASE.drivesToFill
      next.phaseSince_s[i] = now_s
      next.next_s[i] = now_s + rest_s
    } else next.next_s[i] = next.next_s[i]! + rest_s
    passAllLanes(to, next, i, isLoaded)
  })
}

function rejoin(to: Scenario, next: SimState, i: number, pass: number, upTo: number, isLoaded: boolean): void {
  if (pass >= upTo) return
  const lane = to.tenders.ways.lane[pass]!
  if (next.phase[i] === PHASE.waitsAtRoad) {
    const line = 2 * lane + (isLoaded ? 1 : 0)
    next.laneWaiting[line] = next.laneWaiting[line]! + 1
  } else if ((next.part[i]! & 1) === 1) {
    next.laneInside[lane] = next.laneInside[lane]! + 1
    next.laneLoaded[lane] = isLoaded ? 1 : 0
  }
}
