import { rankOf } from '../doubt'

/** One log beside what its plan promised. */
export type PromiseKept = {
  readonly logId: string
  /** Sustainable flow of each night of the plan's doubt, rising. */
  readonly nights_gpm: readonly number[]
  /** Constant flow that the water of the log held. */
  readonly held_gpm: number
  /** Asked for less than was promised, and got it: whether more would have come nobody knows. */
  readonly isUntested: boolean
}

/** Of the flows promised with one chance: how many logs held them, and where the true share may lie. */
export type CalibrationRow = { readonly promisedShare: number; readonly heldCount: number; readonly count: number; readonly heldShare: number; readonly lowShare: number; readonly highShare: number }

/** Standard normal point that leaves a twentieth outside. */
const Z_95 = 1.959963984540054

const PROMISED_SHARES = [0.5, 0.6, 0.7, 0.8, 0.9, 0.95] as const
/** With fewer logs the doubt is wider than any promise. Assumed. */
export const LEAST_LOGS = 5

/**
 * Flow promised with a chance: met in at least that share of the nights.
 *
 * @param nights_gpm rising, one or more
 */
export function promisedFlow_gpm(nights_gpm: readonly number[], share: number): number {
  return nights_gpm[rankOf(nights_gpm.length, share)]!
}

/** Whether promised flows were held, chance by chance; no rows without a log that puts them to the test. */
export function calibrate(logs: readonly PromiseKept[], shares: readonly number[] = PROMISED_SHARES): CalibrationRow[] {
  const tested = logs.filter(({ isUntested, nights_gpm }) => !isUntested && nights_gpm.length > 0)
  if (tested.length === 0) return []
  return shares.map((promisedShare) => {
    const heldCount = tested.filter(({ nights_gpm, held_gpm }) => held_gpm >= promisedFlow_gpm(nights_gpm, promisedShare)).length
    return { promisedShare, heldCount, count: tested.length, heldShare: heldCount / tested.length, ...shareInterval(heldCount, tested.length) }
  })
}

/**
 * Where a share may lie that was seen as k of n: Wilson's score interval, 95 %.
 *
 *   (p + z²/2n ± z √(p (1 − p)/n + z²/4n²)) / (1 + z²/n)
 *
 * @param count n, above 0
 * @source E. B. Wilson 1927; R. G. Newcombe 1998, method 3 (from memory), checked in tests/unit/review
 */
export function shareInterval(heldCount: number, count: number): { lowShare: number; highShare: number } {
  if (!(count > 0)) throw new RangeError(`count is ${count}, must be above 0`)
  const share = heldCount / count
  const square = (Z_95 * Z_95) / count
  const middle = share + square / 2
  const half = Z_95 * Math.sqrt((share * (1 - share)) / count + square / (4 * count))
  return { lowShare: Math.max(0, (middle - half) / (1 + square)), highShare: Math.min(1, (middle + half) / (1 + square)) }
}
