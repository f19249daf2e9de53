/**
 * Median: the middle of some values, between the two in the middle of an even number.
 *
 * @param values in any order, one or more; NaN of none
 */
export function middleOf(values: readonly number[]): number {
  const rising = values.toSorted((a, b) => a - b)
  const half = rising.length / 2
  return rising.length % 2 === 1 ? rising[Math.floor(half)]! : (rising[half - 1]! + rising[half]!) / 2
}
