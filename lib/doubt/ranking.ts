import { explainedShares } from './explained'
import type { DoubtInput } from './input'

/** One input and how much of a figure's variance it explains by itself. */
export type RankedInput = { readonly input: DoubtInput; readonly share: number; readonly shareError: number }

export type Ranking = { readonly inputs: readonly RankedInput[]; readonly restShare: number }

/**
 * The inputs by how much of a figure's variance over the nights each explains, most first.
 *
 * @param factors night, then input
 * @param values  the figure, one a night
 * @returns undefined where nothing varies or there are too few nights for so many inputs
 */
export function rankingOf(inputs: readonly DoubtInput[], factors: Float64Array, values: ArrayLike<number>): Ranking | undefined {
  const explained = explainedShares(factors, inputs.map(({ spreadShare }) => spreadShare), values)
  if (!explained) return undefined
  const ranked = inputs.map((input, i) => ({ input, share: explained.shares[i]!, shareError: explained.errors[i]! }))
  return { inputs: ranked.sort((a, b) => b.share - a.share), restShare: explained.restShare }
}
