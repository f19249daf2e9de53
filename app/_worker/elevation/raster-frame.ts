import type { GeoTIFFImage } from 'geotiff'
import { issue, type Issue } from '@/lib/issue'
import type { Bounds } from '@/lib/geo'
import type { SampleLattice } from '@/lib/terrain'
import { findProjection } from './raster-projection'

/** Where the samples of a GeoTIFF lie: from a place to (column, row) of sample centres and back. */
export type RasterFrame = {
  readonly columnCount: number
  readonly rowCount: number
  readonly bounds: Bounds
  /** Between samples, in degrees of latitude, at the file's middle. */
  readonly step_deg: number
  /** Sample centres, where columns and rows run along lines of longitude and latitude. */
  readonly lattice?: SampleLattice
  toSample(lat: number, lon: number): readonly [number, number]
}

const PIXEL_IS_POINT = 2

/**
 * Places the samples of an image on the earth, by its pixel scale and tie point or an unrotated transformation.
 *
 * A sample that stands for an area (the usual case, and where nothing is said) has its centre half a step in; one that
 * stands for a point has none such.
 *
 * @returns the frame, or `elevation-no-place`, `elevation-projection`, `elevation-rotated` (block)
 * @source OGC GeoTIFF 1.1, raster space and model tie points; from memory
 */
export function findFrame(image: GeoTIFFImage): RasterFrame | Issue {
  const keys = image.getGeoKeys()
  const affine = findAffine(image)
  if (!keys || !affine) return issue('elevation-no-place', 'block')
  if (affine === 'rotated') return issue('elevation-rotated', 'block')
  const projection = findProjection(keys)
  if ('code' in projection) return projection
  const { x0, y0, dx, dy } = affine
  const half = Number(keys['GTRasterTypeGeoKey'] ?? 1) === PIXEL_IS_POINT ? 0 : 0.5
  const columnCount = image.getWidth(), rowCount = image.getHeight()
  const placeOf = (column: number, row: number) => projection.fromFile(x0 + (column + half) * dx, y0 + (row + half) * dy)
  const bounds = boundsOf(placeOf, columnCount, rowCount)
  const middle = [(columnCount - 1) / 2, (rowCount - 1) / 2] as const
  const step_deg = Math.abs(placeOf(middle[0], middle[1] + 0.5).lat - placeOf(middle[0], middle[1] - 0.5).lat)
  if (![bounds.south, bounds.west, bounds.north, bounds.east, step_deg].every(Number.isFinite) || step_deg <= 0) return issue('elevation-no-place', 'block')
  return {
    columnCount, rowCount, bounds, step_deg,
    ...(projection.isDegrees && { lattice: { lat: y0 + half * dy, lon: x0 + half * dx, latStep_deg: Math.abs(dy), lonStep_deg: dx } }),
    toSample: (lat, lon) => {
      const [x, y] = projection.toFile(lat, lon)
      return [(x - x0) / dx - half, (y - y0) / dy - half]
    },
  }
}

type Affine = { x0: number; y0: number; dx: number; dy: number }

/** Model coordinates of raster (0, 0) and the step from sample to sample. */
function findAffine(image: GeoTIFFImage): Affine | 'rotated' | undefined {
  const directory = image.getFileDirectory()
  const scale = numbersOf(directory.getValue('ModelPixelScale')), tie = numbersOf(directory.getValue('ModelTiepoint'))
  const matrix = numbersOf(directory.getValue('ModelTransformation'))
  const [dx = 0, dy = 0] = scale
  if (tie.length >= 6 && dx > 0 && dy > 0) {
    const [i = 0, j = 0, , x = 0, y = 0] = tie
    return { x0: x - i * dx, y0: y + j * dy, dx, dy: -dy }
  }
  if (matrix.length < 16) return undefined
  const [a = 0, b = 0, , x0 = 0, e = 0, f = 0, , y0 = 0] = matrix
  if (Math.abs(b) > Math.abs(a) * 1e-6 || Math.abs(e) > Math.abs(f) * 1e-6) return 'rotated'
  return a > 0 && f !== 0 ? { x0, y0, dx: a, dy: f } : undefined
}

const numbersOf = (value: unknown): number[] =>
  Array.isArray(value) || ArrayBuffer.isView(value) ? Array.from(value as ArrayLike<number>, Number) : []

/** A box around the file: its edges may be curved lines on the earth, so more than the corners are asked. */
function boundsOf(placeOf: (column: number, row: number) => { lat: number; lon: number }, columnCount: number, rowCount: number): Bounds {
  const steps = 16
  let south = Infinity, west = Infinity, north = -Infinity, east = -Infinity
  for (let k = 0; k <= steps; k++) {
    const column = -0.5 + (columnCount * k) / steps, row = -0.5 + (rowCount * k) / steps
    for (const { lat, lon } of [placeOf(column, -0.5), placeOf(column, rowCount - 0.5), placeOf(-0.5, row), placeOf(columnCount - 0.5, row)]) {
      south = Math.min(south, lat); north = Math.max(north, lat)
      west = Math.min(west, lon); east = Math.max(east, lon)
    }
  }
  return { south, west, north, east }
}

/** Columns and rows that a box on the earth touches, with a sample to spare each way; undefined when none. */
export function findWindow(frame: RasterFrame, { south, west, north, east }: Bounds): { left: number; top: number; right: number; bottom: number } | undefined {
  const steps = 16
  let left = Infinity, right = -Infinity, top = Infinity, bottom = -Infinity
  for (let k = 0; k <= steps; k++) {
    const lat = south + ((north - south) * k) / steps, lon = west + ((east - west) * k) / steps
    for (const [column, row] of [frame.toSample(north, lon), frame.toSample(south, lon), frame.toSample(lat, west), frame.toSample(lat, east)]) {
      left = Math.min(left, column); right = Math.max(right, column)
      top = Math.min(top, row); bottom = Math.max(bottom, row)
    }
  }
  const window = {
    left: Math.max(0, Math.floor(left) - 2), top: Math.max(0, Math.floor(top) - 2),
    right: Math.min(frame.columnCount, Math.ceil(right) + 3), bottom: Math.min(frame.rowCount, Math.ceil(bottom) + 3),
  }
  return window.left < window.right && window.top < window.bottom ? window : undefined
}
