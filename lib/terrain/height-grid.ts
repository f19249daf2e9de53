import type { Bounds } from '../geo'
import { requireNotNegative, requirePositive, requireThat } from '../issue'

/** How the doubt of the heights is known: stated by somebody, published for that kind of data, or assumed. */
export const doubtBases = ['stated', 'published', 'assumed'] as const
export type DoubtBasis = (typeof doubtBases)[number]

/**
 * Heights of the ground on a grid of latitude and longitude.
 *
 * Rows go from north to south, columns from west to east; `bounds` runs through the outermost samples. A sample is a
 * whole number of tenths of a metre above `base_m`, or `NO_HEIGHT`: the grid holds exactly what its blob holds.
 */
export type HeightGrid = {
  readonly bounds: Bounds
  readonly rowCount: number
  readonly columnCount: number
  readonly base_m: number
  /** Row by row, [0.1 m above base_m]. */
  readonly samples: Int16Array<ArrayBuffer>
  /** Half the width of the range that nine samples in ten lie in, about. */
  readonly verticalDoubt_ft: number
  readonly doubtBasis: DoubtBasis
}

/** A sample nobody has measured. */
export const NO_HEIGHT = -32768
export const TENTHS_PER_METRE = 10
/** So many samples at most: 8 MB in memory, and a day's walk at 30 m. */
export const MOST_SAMPLES = 4_000_000

/**
 * Checks what a grid is made of.
 *
 * @throws RangeError if sizes, bounds or doubt do not fit together
 */
export function heightGrid(grid: HeightGrid): HeightGrid {
  const { bounds, rowCount, columnCount, samples, verticalDoubt_ft, base_m } = grid
  requireThat(Number.isInteger(rowCount) && rowCount >= 2, 'rowCount', rowCount, 'a whole number of 2 or more')
  requireThat(Number.isInteger(columnCount) && columnCount >= 2, 'columnCount', columnCount, 'a whole number of 2 or more')
  requireThat(samples.length === rowCount * columnCount, 'samples', samples.length, 'rowCount × columnCount long')
  requireThat(Number.isFinite(base_m), 'base_m', base_m, 'a number')
  requireNotNegative('verticalDoubt_ft', verticalDoubt_ft)
  requirePositive('north less south', bounds.north - bounds.south)
  requirePositive('east less west', bounds.east - bounds.west)
  requireThat(bounds.south >= -90 && bounds.north <= 90, 'bounds', JSON.stringify(bounds), 'on the earth')
  requireThat(bounds.west >= -180 && bounds.east <= 180, 'bounds', JSON.stringify(bounds), 'on the earth')
  return grid
}

/** Degrees of latitude from row to row. */
export const rowStep_deg = ({ bounds, rowCount }: HeightGrid): number => (bounds.north - bounds.south) / (rowCount - 1)
/** Degrees of longitude from column to column. */
export const columnStep_deg = ({ bounds, columnCount }: HeightGrid): number => (bounds.east - bounds.west) / (columnCount - 1)
