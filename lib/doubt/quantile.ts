import { requireThat } from '../issue'

/**
 * Value below which a share of a sample lies, straight between neighbours.
 *
 *   position = share · (n − 1)
 *
 * @param sorted_ rising, at least one; Infinity stands for "never" and is not blended with a number
 * @param share   0 to 1
 * @throws RangeError if the sample is empty or the share outside its range
 * @source definition 7 of Hyndman and Fan, Sample quantiles in statistical packages (1996), from memory
 */
export function quantile(sorted: ArrayLike<number>, share: number): number {
  requireThat(sorted.length > 0, 'sorted.length', sorted.length, '1 or more')
  requireThat(share >= 0 && share <= 1, 'share', share, 'between 0 and 1')
  const position = share * (sorted.length - 1)
  const low = Math.floor(position)
  const below = sorted[low]!
  const above = sorted[Math.min(low + 1, sorted.length - 1)]!
  return below === above || position === low ? below : below + (above - below) * (position - low)
}

/**
 * Standard error of a share counted in independent nights.
 *
 *   √( p (1 − p) / n )
 *
 * @param share counted, 0 to 1
 * @param count of nights, 1 or more
 * @source binomial distribution, any textbook
 */
export const shareError = (share: number, count: number): number => Math.sqrt((share * (1 - share)) / count)
