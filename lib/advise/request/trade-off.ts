import type { SetDesk, TenderSet } from './set-desk'
import { setCount, setsOfSize, sizeOf } from './sets'

/** The best that a number of tenders gives. */
export type TradeOffPoint = {
  readonly tenderCount: number
  /** Most flow that any set of this size sustains. */
  readonly flow_gpm: number
  readonly flowIds: readonly string[]
  /** Earliest that any set of this size has the asked flow; null: none has. */
  readonly met_s: number | null
  readonly metIds: readonly string[]
  /** False: not every set of this size was looked at, there may be a better one. */
  readonly isExact: boolean
}

/** Sizes with more sets than this are searched from their neighbours only. */
const MOST_SETS = 1000

/**
 * Flow, and time to the asked flow, against the number of tenders.
 *
 * All sets of a size are looked at where there are not too many. Beyond, the best of the size before with one more, and
 * with one changed for another.
 */
export function* tradeOff(desk: SetDesk): Generator<void, TradeOffPoint[]> {
  const count = desk.ids.length
  const points: TradeOffPoint[] = []
  let before: readonly TenderSet[] = []
  for (let size = 1; size <= count; size++) {
    const isExact = setCount(count, size) <= MOST_SETS
    const sets = isExact ? setsOfSize(count, size) : near(desk, before)
    let most: TenderSet | undefined
    let first: TenderSet | undefined
    for (const set of sets) {
      if (sizeOf(set) !== size) continue
      const mostNow_gpm = most === undefined ? -1 : desk.answer(most).flow_gpm
      // What cannot beat the best flow nor carry the asked one need not be simulated.
      if (Math.min(desk.bound_gpm(set), desk.hauled_gpm(set)) <= mostNow_gpm && desk.cannotMeet(set)) continue
      const { flow_gpm, met_s } = desk.answer(set)
      if (flow_gpm > mostNow_gpm) most = set
      if (met_s !== undefined && met_s < (first === undefined ? Infinity : (desk.answer(first).met_s ?? Infinity))) first = set
      yield
    }
    before = [most, first].filter((set) => set !== undefined)
    points.push({
      tenderCount: size, isExact,
      flow_gpm: most === undefined ? 0 : desk.answer(most).flow_gpm, flowIds: idsOf(desk, most),
      met_s: (first !== undefined && desk.answer(first).met_s) || null, metIds: idsOf(desk, first),
    })
  }
  return points
}

/** The tenders of a set, in the order of the desk; none of undefined. */
export const idsOf = (desk: SetDesk, set: TenderSet | undefined): string[] => (set === undefined ? [] : desk.ids.filter((_, index) => set & (1 << index)))

/** The sets before with one more, and those with one changed for another. */
function near(desk: SetDesk, before: readonly TenderSet[]): Set<TenderSet> {
  const bits = desk.ids.map((_, index) => 1 << index)
  const larger = new Set(before.flatMap((set) => bits.flatMap((bit) => (set & bit ? [] : [set | bit]))))
  const changed = [...larger].flatMap((set) => bits.flatMap((out) => (set & out ? bits.flatMap((bit) => (set & bit ? [] : [(set & ~out) | bit])) : [])))
  return new Set([...larger, ...changed])
}
