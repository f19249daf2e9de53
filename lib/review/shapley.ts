/**
 * Shapley value of every player: its mean gain over all orders in which players can join, so that no order is preferred
 * and the shares add up to what all gain together.
 *
 *   φ(i) = Σ over sets S without i  |S|! (n − |S| − 1)! / n! · (v(S ∪ i) − v(S))
 *
 * @param count   n, 0 to 16
 * @param valueOf v of a set, given as the bits of a number: bit k is player k. Called once for each of the 2ⁿ sets
 * @returns one share a player
 * @source L. S. Shapley, A Value for n-Person Games, 1953 (from memory)
 */
export function shapleyValues(count: number, valueOf: (set: number) => number): number[] {
  if (!Number.isInteger(count) || count < 0 || count > 16) throw new RangeError(`count is ${count}, must be a whole number from 0 to 16`)
  const values = Float64Array.from({ length: 1 << count }, (_, set) => valueOf(set))
  const weights = weightsOf(count)
  return Array.from({ length: count }, (_, player) => {
    let sum = 0
    for (let set = 0; set < values.length; set++) {
      if ((set >> player) & 1) continue
      sum += weights[sizeOf(set)]! * (values[set | (1 << player)]! - values[set]!)
    }
    return sum
  })
}

/** By size of the set: |S|! (n − |S| − 1)! / n!, which is 1 / (n · C(n − 1, |S|)). */
function weightsOf(count: number): number[] {
  let choose = 1
  return Array.from({ length: count }, (_, size) => {
    const weight = 1 / (count * choose)
    choose = (choose * (count - 1 - size)) / (size + 1)
    return weight
  })
}

function sizeOf(set: number): number {
  let size = 0
  for (let rest = set; rest > 0; rest &= rest - 1) size++
  return size
}
