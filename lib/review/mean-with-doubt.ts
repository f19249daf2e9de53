import { middleOf } from '../middle-of'

/** A mean of what was seen, and how far it may be off. */
export type MeanWithDoubt = {
  readonly value: number
  /** Values that count. */
  readonly count: number
  readonly low: number
  readonly high: number
  /** Half the range it may lie in, as a share of it. */
  readonly spreadShare: number
  /** Too many of the values lie far from the others for their mean to say anything. */
  readonly isScattered: boolean
}

/** What nobody has measured is doubted by as much: `spreadByMark` of what is assumed. */
export const GUESS_SPREAD = 0.3
/** However well a thing was timed, another night differs by this. Common practice, no source. */
const LEAST_SPREAD = 0.03
/** What two times say. Common practice, no source. */
const FEW_SPREAD = 0.15
const FEW_COUNT = 3
/** Times further from their middle than this were not pressed at the moment. Assumed. */
export const ODD_FACTOR = 2
/** Robust spreads from the middle within which values count. Common practice, no source. */
const ROBUST_SPREADS = 3
/** Median distance from the middle to the standard deviation of a normal spread: 1 ÷ 0.6745. */
const DEVIATION_FACTOR = 1.4826
/** Of the values so many at least must count. Assumed. */
const COUNTED_SHARE = 2 / 3

/**
 * Mean of measured values with its doubt: two standard errors of the mean, never less than 3 %, of two never less than 15 %, and of one that
 * of a guess: nobody knows what it would have been another time.
 *
 * Of three or more those beyond three robust spreads (1.4826 × the middle distance from the middle, at least a tenth of it), twice or half the
 * middle one are left out.
 *
 * @param all one or more, above 0
 */
export function meanWithDoubt(all: readonly number[]): MeanWithDoubt {
  const middle = middleOf(all)
  const spread = Math.max(DEVIATION_FACTOR * middleOf(all.map((one) => Math.abs(one - middle))), (GUESS_SPREAD / ROBUST_SPREADS) * middle)
  const counts = (one: number): boolean => Math.abs(one - middle) <= ROBUST_SPREADS * spread && one <= middle * ODD_FACTOR && one >= middle / ODD_FACTOR
  const near = all.length < FEW_COUNT ? all : all.filter(counts)
  const values = near.length > 0 ? near : all
  const count = values.length
  const value = values.reduce((sum, one) => sum + one, 0) / count
  const variance = count > 1 ? values.reduce((sum, one) => sum + (one - value) ** 2, 0) / (count - 1) : 0
  const error = value > 0 ? (2 * Math.sqrt(variance / count)) / value : 0
  const least = count === 1 ? GUESS_SPREAD : count < FEW_COUNT ? FEW_SPREAD : LEAST_SPREAD
  return { value, count, low: Math.min(...values), high: Math.max(...values), spreadShare: Math.min(1, Math.max(error, least)), isScattered: near.length < all.length * COUNTED_SHARE }
}
