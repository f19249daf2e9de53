import type { SetDesk, TenderSet } from './set-desk'
import { sizeOf } from './sets'
import { isBetter } from './smallest-set'

/**
 * A small set that meets the asked flow by the asked time, without looking at all of them; for more tenders than an exact
 * search can take.
 *
 * Greedy: the tender that brings the flow nearest to what is asked is added until it is met; then tenders are taken
 * out while it stays met; then each is changed for each other, and two for one, as long as that makes the set smaller or
 * meets it sooner. It can miss the smallest set; how often is measured in the tests.
 *
 * @returns undefined when even so no set was found
 */
export function* greedySet(desk: SetDesk): Generator<void, TenderSet | undefined> {
  const all = desk.ids.map((_, index) => 1 << index)
  let set: TenderSet = 0
  while (set !== desk.whole && !(set > 0 && desk.isMet(set))) {
    let next: TenderSet | undefined
    for (const bit of all) {
      if (set & bit) continue
      yield
      if (next === undefined || isNearer(desk, set | bit, next)) next = set | bit
    }
    set = next ?? desk.whole
  }
  if (!desk.isMet(set)) return undefined
  for (let improved: TenderSet | undefined = set; improved !== undefined;) {
    set = improved
    improved = undefined
    for (const other of neighbours(desk, set, all)) {
      yield
      if (desk.cannotMeet(other) || !desk.isMet(other)) continue
      const shrinks = sizeOf(other) - sizeOf(improved ?? set)
      if (shrinks < 0 || (shrinks === 0 && isBetter(desk, other, improved ?? set))) improved = other
    }
  }
  return set
}

/** Towards the flow first, then towards the time. */
function isNearer(desk: SetDesk, a: TenderSet, b: TenderSet): boolean {
  const short_gpm = (set: TenderSet) => Math.max(0, desk.ask.flow_gpm - desk.answer(set).flow_gpm)
  const [one_gpm, other_gpm] = [short_gpm(a), short_gpm(b)]
  return Math.abs(one_gpm - other_gpm) > 0.5 ? one_gpm < other_gpm : isBetter(desk, a, b)
}

/** One fewer; one for one; one in for two out. */
function* neighbours(desk: SetDesk, set: TenderSet, all: readonly TenderSet[]): Generator<TenderSet> {
  const inside = all.filter((bit) => set & bit)
  const outside = all.filter((bit) => !(set & bit))
  for (const bit of inside) if (set !== bit) yield set & ~bit
  for (const bit of outside) for (const out of inside) yield (set & ~out) | bit
  for (const bit of outside) for (const [at, first] of inside.entries()) for (const second of inside.slice(at + 1)) yield (set & ~first & ~second) | bit
}
