import { METRES_PER_DEGREE } from '../geo'
import { findSampleM } from './height-at'
import { columnStep_deg, rowStep_deg, type HeightGrid } from './height-grid'

/** Where the light comes from: the custom of maps, from the upper left. */
export type Light = { readonly azimuth_deg: number; readonly height_deg: number }
export const mapLight: Light = { azimuth_deg: 315, height_deg: 45 }

const radians = (degrees: number): number => (degrees * Math.PI) / 180

/**
 * Light that falls on the ground at each sample, for shading a map.
 *
 *   share = max(0, n · l)      slopes by Horn's weights over the eight neighbours
 *
 * @param grid  of a district
 * @param light direction, degrees; default from the north-west, 45° high
 * @param exaggerationFactor heights are multiplied by this, so that low hills show; 1 or more
 * @returns row by row as the samples, 0 dark to 1 full; level ground has the sine of the light's height, and so has a
 *   sample whose neighbours are not all known
 * @source B. K. P. Horn, Hill shading and the reflectance map, 1981; from memory
 */
export function hillShade(grid: HeightGrid, { azimuth_deg, height_deg }: Light = mapLight, exaggerationFactor = 1): Float32Array<ArrayBuffer> {
  const { rowCount, columnCount, bounds } = grid
  const level = Math.sin(radians(height_deg))
  const shares = new Float32Array(rowCount * columnCount).fill(level)
  const east = Math.cos(radians(height_deg)) * Math.sin(radians(azimuth_deg)), north = Math.cos(radians(height_deg)) * Math.cos(radians(azimuth_deg))
  const rowStep_m = rowStep_deg(grid) * METRES_PER_DEGREE
  for (let row = 1; row < rowCount - 1; row++) {
    const lat = bounds.north - row * rowStep_deg(grid)
    const columnStep_m = columnStep_deg(grid) * METRES_PER_DEGREE * Math.max(0.01, Math.cos(radians(lat)))
    for (let column = 1; column < columnCount - 1; column++) {
      const slope = findSlope(grid, row, column, rowStep_m, columnStep_m)
      if (!slope) continue
      const x = slope.east * exaggerationFactor, y = slope.north * exaggerationFactor
      shares[row * columnCount + column] = Math.max(0, (level - x * east - y * north) / Math.hypot(1, x, y))
    }
  }
  return shares
}

/** Rise over distance eastwards and northwards, by Horn's weights; undefined beside a gap. */
function findSlope(grid: HeightGrid, row: number, column: number, rowStep_m: number, columnStep_m: number): { readonly east: number; readonly north: number } | undefined {
  let east = 0, north = 0
  for (let dRow = -1; dRow <= 1; dRow++) {
    for (let dColumn = -1; dColumn <= 1; dColumn++) {
      const height_m = findSampleM(grid, row + dRow, column + dColumn)
      if (height_m === undefined) return undefined
      east += height_m * dColumn * (dRow === 0 ? 2 : 1)
      north -= height_m * dRow * (dColumn === 0 ? 2 : 1)
    }
  }
  return { east: east / (8 * columnStep_m), north: north / (8 * rowStep_m) }
}
