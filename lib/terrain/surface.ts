import type { Bounds } from '../geo'

/** One sample's place, and the steps to the next ones. */
export type SampleLattice = { readonly lat: number; readonly lon: number; readonly latStep_deg: number; readonly lonStep_deg: number }

/** Heights as a file gives them, asked for by place: metres, undefined where it has none. */
export type HeightSurface = {
  /** What the file covers, or a box around it. */
  readonly bounds: Bounds
  /** Between its samples, about; in degrees of latitude. */
  readonly step_deg: number
  /** Where its samples lie, when they lie on lines of latitude and longitude. */
  readonly lattice?: SampleLattice
  findHeightM(lat: number, lon: number): number | undefined
}

/**
 * Height between the four samples around a place on a plain raster, in samples from its first one. Up to half a
 * sample beyond the outermost the nearest ones are taken: a sample that stands for an area reaches so far.
 *
 * @param values row by row; not finite where there is none
 */
export function findRasterValue(values: ArrayLike<number>, rowCount: number, columnCount: number, y: number, x: number): number | undefined {
  if (!(y >= -0.5 && x >= -0.5 && y <= rowCount - 0.5 && x <= columnCount - 0.5)) return undefined
  const yIn = Math.min(rowCount - 1, Math.max(0, y)), xIn = Math.min(columnCount - 1, Math.max(0, x))
  const row = Math.min(Math.max(0, rowCount - 2), Math.floor(yIn)), column = Math.min(Math.max(0, columnCount - 2), Math.floor(xIn))
  const v = yIn - row, u = xIn - column
  let sum = 0
  for (let k = 0; k < 4; k++) {
    const dRow = k >> 1, dColumn = k & 1
    const share = (dRow ? v : 1 - v) * (dColumn ? u : 1 - u)
    if (share < 1e-9) continue
    const value = values[(row + dRow) * columnCount + column + dColumn]
    if (value === undefined || !Number.isFinite(value)) return undefined
    sum += share * value
  }
  return sum
}
