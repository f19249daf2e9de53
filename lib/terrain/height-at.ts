import type { Point } from '../geo'
import { feetFromMetres } from '../units'
import { NO_HEIGHT, TENTHS_PER_METRE, columnStep_deg, rowStep_deg, type HeightGrid } from './height-grid'

/** Height of the ground at a place, and how far it may be off. */
export type GroundHeight = {
  readonly height_ft: number
  /** Doubt of the data, and of the place: half the spread of the four samples around it. */
  readonly doubt_ft: number
}

/** Height of one sample in metres; undefined where there is none or outside the grid. */
export function findSampleM(grid: HeightGrid, row: number, column: number): number | undefined {
  if (row < 0 || column < 0 || row >= grid.rowCount || column >= grid.columnCount) return undefined
  const sample = grid.samples[row * grid.columnCount + column]
  return sample === undefined || sample === NO_HEIGHT ? undefined : grid.base_m + sample / TENTHS_PER_METRE
}

/**
 * Height of the ground at a place, between the four samples around it (bilinear).
 *
 *   h = (1−u)(1−v) h₀₀ + u (1−v) h₀₁ + (1−u) v h₁₀ + u v h₁₁      doubt = √(data² + (half the spread of the four)²)
 *
 * The second part of the doubt stands for not knowing where between the samples the ground rises.
 *
 * @param grid  of a district
 * @param point in degrees
 * @returns undefined outside the grid, and where a sample that counts is missing
 * @source own; bilinear interpolation as in any text
 */
export function findHeight(grid: HeightGrid, { lat, lon }: Point): GroundHeight | undefined {
  const { bounds, rowCount, columnCount } = grid
  if (!(lat >= bounds.south && lat <= bounds.north && lon >= bounds.west && lon <= bounds.east)) return undefined
  const y = (bounds.north - lat) / rowStep_deg(grid), x = (lon - bounds.west) / columnStep_deg(grid)
  const row = Math.min(rowCount - 2, Math.floor(y)), column = Math.min(columnCount - 2, Math.floor(x))
  const v = Math.min(1, y - row), u = Math.min(1, x - column)
  let height_m = 0, lowest_m = Infinity, highest_m = -Infinity
  for (const [dRow, dColumn, share] of [[0, 0, (1 - u) * (1 - v)], [0, 1, u * (1 - v)], [1, 0, (1 - u) * v], [1, 1, u * v]] as const) {
    const corner_m = findSampleM(grid, row + dRow, column + dColumn)
    if (corner_m === undefined) {
      // A corner that does not count may be missing: a place on a line of samples needs only those.
      if (share < 1e-9) continue
      return undefined
    }
    height_m += share * corner_m
    lowest_m = Math.min(lowest_m, corner_m)
    highest_m = Math.max(highest_m, corner_m)
  }
  return { height_ft: feetFromMetres(height_m), doubt_ft: Math.hypot(grid.verticalDoubt_ft, feetFromMetres(highest_m - lowest_m) / 2) }
}
