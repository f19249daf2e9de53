import { requirePositive } from '../issue'

/** How far a coefficient can be trusted. */
export type HoseMark = 'seen' | 'memory' | 'interpolated'

export type HoseCoefficient = {
  /** C, [psi per 100 ft at 100 gpm]. */
  readonly coefficient: number
  readonly mark: HoseMark
  /** Name of the hose in the table; undefined between rows. */
  readonly hose?: string
}

export type HoseRow = Required<HoseCoefficient> & { readonly size_in: number; readonly others: readonly number[] }

/** Friction coefficients by hose; `others` are values other sources give for the same hose. */
export const hoseCatalog: readonly HoseRow[] = [
  { size_in: 0.75, hose: '3/4 in booster', coefficient: 1100, mark: 'memory', others: [] },
  { size_in: 1, hose: '1 in', coefficient: 150, mark: 'seen', others: [] },
  { size_in: 1.25, hose: '1 1/4 in', coefficient: 80, mark: 'memory', others: [] },
  { size_in: 1.5, hose: '1 1/2 in', coefficient: 24, mark: 'seen', others: [] },
  { size_in: 1.75, hose: '1 3/4 in', coefficient: 15.5, mark: 'seen', others: [10, 9.5] },
  { size_in: 2, hose: '2 in', coefficient: 8, mark: 'seen', others: [] },
  { size_in: 2.5, hose: '2 1/2 in', coefficient: 2, mark: 'seen', others: [] },
  { size_in: 3, hose: '3 in, 2 1/2 in couplings', coefficient: 0.8, mark: 'seen', others: [0.677] },
  { size_in: 3.5, hose: '3 1/2 in', coefficient: 0.34, mark: 'memory', others: [] },
  { size_in: 4, hose: '4 in', coefficient: 0.2, mark: 'seen', others: [] },
  { size_in: 4.5, hose: '4 1/2 in', coefficient: 0.1, mark: 'seen', others: [] },
  { size_in: 5, hose: '5 in', coefficient: 0.08, mark: 'seen', others: [] },
  { size_in: 6, hose: '6 in', coefficient: 0.05, mark: 'memory', others: [] },
]

/** 3 in hose with 3 in couplings; a row of its own, because size does not tell it apart. */
export const THREE_INCH_WIDE_COUPLINGS_COEFFICIENT = 0.677

/**
 * Friction coefficient of fire hose by nominal size.
 *
 * Where sources differ (1.75 in: 15.5, 10 or 9.5; 3 in: 0.8 or 0.677) the larger is taken: it promises less flow.
 * Between rows C follows a power of the size from row to row; outside 0.75 to 6 in it goes with size^−5 from the end row.
 *
 * @param size_in nominal bore, above 0
 * @throws RangeError if not positive
 * @source handbook and city training record, marks in hoseCatalog
 */
export function hoseCoefficient(size_in: number): HoseCoefficient {
  requirePositive('size_in', size_in)
  const upper = hoseCatalog.find((row) => row.size_in >= size_in)
  if (upper?.size_in === size_in) return { coefficient: upper.coefficient, mark: upper.mark, hose: upper.hose }
  const lower = hoseCatalog.findLast((row) => row.size_in < size_in)
  if (upper && lower) {
    const share = Math.log(size_in / lower.size_in) / Math.log(upper.size_in / lower.size_in)
    return { coefficient: lower.coefficient * (upper.coefficient / lower.coefficient) ** share, mark: 'interpolated' }
  }
  const end = upper ?? lower
  if (!end) throw new RangeError(`size_in is ${size_in}, must be a hose size`)
  return { coefficient: end.coefficient * (end.size_in / size_in) ** 5, mark: 'interpolated' }
}
