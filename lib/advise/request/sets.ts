import type { TenderSet } from './set-desk'

/** How many tenders are in a set. */
export const sizeOf = (set: TenderSet): number => {
  let count = 0
  for (let rest = set; rest > 0; rest &= rest - 1) count++
  return count
}

/**
 * Every set of a size out of `count`, in rising order of their numbers.
 *
 * @param keep asked of each partial choice, largest index last: false leaves out all that begin with it
 */
export function* setsOfSize(count: number, size: number, keep: (chosen: TenderSet, from: number, missing: number) => boolean = () => true): Generator<TenderSet> {
  function* grow(chosen: TenderSet, from: number, missing: number): Generator<TenderSet> {
    if (missing === 0) {
      yield chosen
      return
    }
    if (!keep(chosen, from, missing)) return
    for (let index = from; index <= count - missing; index++) yield* grow(chosen | (1 << index), index + 1, missing - 1)
  }
  yield* grow(0, 0, size)
}

/** How many sets of a size there are. */
export function setCount(count: number, size: number): number {
  let sets = 1
  for (let k = 1; k <= size; k++) sets = (sets * (count - size + k)) / k
  return Math.round(sets)
}
