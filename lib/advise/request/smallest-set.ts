import type { SetDesk, TenderSet } from './set-desk'
import { setsOfSize } from './sets'

/** The best first: met earlier, then more flow, then the lower number, so that the answer is one. */
export function isBetter(desk: SetDesk, a: TenderSet, b: TenderSet | undefined): boolean {
  if (b === undefined) return true
  const [one, other] = [desk.answer(a), desk.answer(b)]
  const early_s = (other.met_s ?? Infinity) - (one.met_s ?? Infinity)
  if (Number.isFinite(early_s) && Math.abs(early_s) > 1e-6) return early_s > 0
  if (Math.abs(one.flow_gpm - other.flow_gpm) > 1e-6) return one.flow_gpm > other.flow_gpm
  return a < b
}

/**
 * The smallest set of tenders that meets the asked flow by the asked time; of several of that size the one that meets it
 * first. Exact: sizes are taken in rising order, and of a size only those sets are passed over whose bound shows that
 * they cannot carry the flow.
 *
 * More tenders may, now and then, carry a few per cent less (lib/shuttle/README.md), so no set is passed over for what a
 * smaller or larger one gave. The bound is additive and holds for every set: chosen so far plus the best that may follow.
 *
 * @yields after each set that was looked at closer
 * @returns undefined when no set meets it
 */
export function* smallestSet(desk: SetDesk): Generator<void, TenderSet | undefined> {
  const count = desk.ids.length
  for (let size = 1; size <= count; size++) {
    let best: TenderSet | undefined
    for (const set of setsOfSize(count, size, (chosen, from, missing) => mayReach(desk, chosen, from, missing))) {
      if (desk.cannotMeet(set)) continue
      if (desk.isMet(set) && isBetter(desk, set, best)) best = set
      yield
    }
    if (best !== undefined) return best
  }
  return undefined
}

/** Whether a partial choice, with the best that may still be added, could carry the asked flow. */
function mayReach(desk: SetDesk, chosen: TenderSet, from: number, missing: number): boolean {
  const rest = desk.ids.map((_, index) => (index >= from ? desk.boundOf_gpm(index) : 0)).sort((a, b) => b - a)
  let most_gpm = rest.slice(0, missing).reduce((sum, bound_gpm) => sum + bound_gpm, 0)
  desk.ids.forEach((_, index) => { if (chosen & (1 << index)) most_gpm += desk.boundOf_gpm(index) })
  return most_gpm >= desk.ask.flow_gpm - 0.5
}
