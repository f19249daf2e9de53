import { ownWay, passAllLanes } from './carry-roads'
import { PHASE } from './phase'
import type { Scenario } from './scenario'
import { FIRE, FREE, type SimState } from './state'

const isAtDump = (phase: number): boolean => phase >= PHASE.waitsToDump && phase <= PHASE.clearsPosition
const isAtFill = (phase: number): boolean => (phase >= PHASE.waitsToFill && phase <= PHASE.clearsBay) || phase === PHASE.waitsInBay
const isInSlot = (phase: number): boolean => (isAtDump(phase) && phase !== PHASE.waitsToDump) || (isAtFill(phase) && phase !== PHASE.waitsToFill)

/** Every tender of `to` as it was, its place found again by the id of the site. */
export function carryTenders(from: Scenario, old: SimState, tenderFrom: readonly number[], to: Scenario, next: SimState): void {
  let brought_gal = 0
  tenderFrom.forEach((source, i) => {
    if (source < 0 || old.phase[source] === PHASE.coming) {
      brought_gal += next.load_gal[i]! - (source < 0 ? 0 : old.load_gal[source]!)
      return
    }
    const floats = ['phaseSince_s', 'ticket', 'load_gal', 'rate_gpm', 'pace', 'waitedToDump_s', 'waitedToFill_s', 'given_gal', 'left_s', 'waitedOnRoad_s', 'restedAt_s'] as const
    for (const field of floats) next[field][i] = old[field][source]!
    for (const field of ['phase', 'part', 'rounds', 'filled'] as const) next[field][i] = old[field][source]!
    next.way[i] = old.way[source]! < to.tenders.wayCount[i]! ? old.way[source]! : ownWay(to, i)
    next.next_s[i] = old.next_s[source]!
    next.rank[i] = old.rank[source]!
    const excess_gal = next.load_gal[i]! - to.tenders.load_gal[i]!
    if (excess_gal > 0) {
      next.load_gal[i] = to.tenders.load_gal[i]!
      brought_gal -= excess_gal
    }
    if (next.phase[i] === PHASE.dumps) next.part[i] = Math.min(next.part[i]!, to.tenders.partCount[i]! - 1)
    place(from, old.place[source]!, to, next, i)
  })
  from.spec.tenders.forEach((_, source) => {
    if (!tenderFrom.includes(source) && old.phase[source] !== PHASE.gone) brought_gal -= old.load_gal[source]!
  })
  next.fire[FIRE.initial_gal] = next.fire[FIRE.initial_gal]! + brought_gal
}

/** The same site where there is one; else off to the new one: with water to dump, without to fill. */
function place(from: Scenario, oldPlace: number, to: Scenario, next: SimState, i: number): void {
  const wasDump = oldPlace < from.dumps.count
  const id = wasDump ? from.spec.dumps[oldPlace]!.id : from.spec.fills[oldPlace - from.dumps.count]!.id
  const found = (wasDump ? to.spec.dumps : to.spec.fills).findIndex((site) => site.id === id)
  if (found >= 0) {
    next.place[i] = wasDump ? found : to.dumps.count + found
    return
  }
  const phase = next.phase[i]!
  const now_s = next.clock_s[0]!
  const newDump = to.tenders.dump[i]!
  const newFill = to.dumps.count + to.tenders.fill[i]!
  if (phase === PHASE.gone || phase === PHASE.rests || phase === PHASE.drivesToDump || phase === PHASE.drivesToFill || phase === PHASE.waitsAtRoad) {
    next.place[i] = wasDump ? newDump : newFill
    next.way[i] = ownWay(to, i)
    return
  }
  const hasWater = wasDump ? phase !== PHASE.clearsPosition : phase === PHASE.clearsBay
  next.phase[i] = hasWater ? PHASE.drivesToDump : PHASE.drivesToFill
  next.place[i] = hasWater ? newDump : newFill
  next.rate_gpm[i] = 0
  next.phaseSince_s[i] = now_s
  next.next_s[i] = now_s + (hasWater ? to.tenders.toDump_s[i]! : to.tenders.toFill_s[i]!)
  next.way[i] = ownWay(to, i)
  passAllLanes(to, next, i, hasWater)
}

/** Puts everyone back into position or bay, in the same one where it still exists, and counts the lines. */
export function seatTenders(
  from: Scenario, old: SimState, tenderFrom: readonly number[], dumpFrom: readonly number[], fillFrom: readonly number[], to: Scenario, next: SimState,
): void {
  const siteCount = to.dumps.count + to.fills.count
  for (let site = 0; site < siteCount; site++) {
    const first = to.slots.from[site]!
    const upTo = to.slots.upTo[site]!
    const source = site < to.dumps.count ? dumpFrom[site]! : fillFrom[site - to.dumps.count]!
    const oldSite = source < 0 || site < to.dumps.count ? source : from.dumps.count + source
    if (oldSite < 0) continue
    const oldFirst = from.slots.from[oldSite]!
    for (let slot = first; slot < upTo && oldFirst + slot - first < from.slots.upTo[oldSite]!; slot++) {
      next.slotBusy_s[slot] = old.slotBusy_s[oldFirst + slot - first]!
      next.slotSince_s[slot] = old.slotSince_s[oldFirst + slot - first]!
    }
    const seated = tenderFrom.flatMap((source, i) => (source >= 0 && next.place[i] === site && isInSlot(next.phase[i]!) ? [i] : []))
    const offsetOf = (i: number) => old.slot[tenderFrom[i]!]! - oldFirst
    seated.sort((a, b) => offsetOf(a) - offsetOf(b))
    for (const i of seated) {
      const wanted = first + offsetOf(i)
      let slot = wanted < upTo && next.slotTender[wanted] === FREE ? wanted : first
      while (slot < upTo && next.slotTender[slot] !== FREE) slot++
      if (slot < upTo) {
        next.slot[i] = slot
        next.slotTender[slot] = i
        next.slotSince_s[slot] = old.slotSince_s[old.slot[tenderFrom[i]!]!]!
      } else {
        returnToLine(to, next, i, site)
      }
    }
  }
  for (let i = 0; i < to.tenders.count; i++) {
    const phase = next.phase[i]!
    if (phase === PHASE.waitsToDump || phase === PHASE.waitsToFill) next.waiting[next.place[i]!] = next.waiting[next.place[i]!]! + 1
    if (phase === PHASE.fills) next.filling[next.place[i]! - to.dumps.count] = next.filling[next.place[i]! - to.dumps.count]! + 1
  }
}

function returnToLine(to: Scenario, next: SimState, i: number, site: number): void {
  const now_s = next.clock_s[0]!
  const phase = next.phase[i]!
  next.rate_gpm[i] = 0
  next.phaseSince_s[i] = now_s
  if (phase === PHASE.clearsPosition || phase === PHASE.clearsBay) {
    // Its work is done: it leaves at once.
    const isDump = phase === PHASE.clearsPosition
    next.phase[i] = isDump ? PHASE.drivesToFill : PHASE.drivesToDump
    next.place[i] = isDump ? to.dumps.count + to.tenders.fill[i]! : to.tenders.dump[i]!
    next.next_s[i] = now_s + (isDump ? to.tenders.toFill_s[i]! : to.tenders.toDump_s[i]!)
    next.way[i] = ownWay(to, i)
    passAllLanes(to, next, i, !isDump)
    return
  }
  next.phase[i] = site < to.dumps.count ? PHASE.waitsToDump : PHASE.waitsToFill
  next.next_s[i] = Infinity
  next.ticket[i] = -1
}
