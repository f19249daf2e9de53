import type { Bounds } from '@/lib/geo'
import { hillShade, mapLight, type HeightGrid } from '@/lib/terrain'

/** A picture to lay over the ground: black where it lies in shadow, white where the light falls on it, clear where it is level. */
export type ShadePicture = {
  readonly width: number
  readonly height: number
  /** Of the picture's outer edges. Its rows are even in latitude. */
  readonly bounds: Bounds
  /** Red, green, blue, alpha of each pixel; alpha in full, to be drawn at the strength the map bears. */
  readonly pixels: Uint8ClampedArray<ArrayBuffer>
}

/** Hills of farm country are low: their slopes are drawn so much steeper. */
const EXAGGERATION = 2.5
/** Larger pictures cost memory and show no more. */
const LARGEST_SIDE = 2048

/** The hill shade of a district as a picture; of a very fine grid every second sample, or third. */
export function shadePicture(grid: HeightGrid): ShadePicture {
  const shares = hillShade(grid, mapLight, EXAGGERATION)
  const level = Math.sin((mapLight.height_deg * Math.PI) / 180)
  const { bounds: { south, west, north, east } } = grid
  const stride = Math.ceil(Math.max(grid.rowCount, grid.columnCount) / LARGEST_SIDE)
  const width = Math.ceil(grid.columnCount / stride), height = Math.ceil(grid.rowCount / stride)
  const pixels = new Uint8ClampedArray(width * height * 4)
  for (let row = 0; row < height; row++) {
    for (let column = 0; column < width; column++) {
      const share = shares[row * stride * grid.columnCount + column * stride] ?? level
      const at = (row * width + column) * 4
      const isLit = share > level
      pixels.fill(isLit ? 255 : 0, at, at + 3)
      pixels[at + 3] = 255 * (isLit ? (share - level) / (1 - level) : (level - share) / level)
    }
  }
  // A sample stands in the middle of its pixel.
  const stepLat = ((north - south) / (grid.rowCount - 1)) * stride, stepLon = ((east - west) / (grid.columnCount - 1)) * stride
  const top = north + stepLat / 2, left = west - stepLon / 2
  return { width, height, pixels, bounds: { north: top, west: left, south: top - height * stepLat, east: left + width * stepLon } }
}
