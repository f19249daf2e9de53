import { contours } from 'd3-contour'
import { columnStep_deg, findSampleM, rowStep_deg, type HeightGrid } from '@/lib/terrain'
import { feetFromMetres } from '@/lib/units'

/** A line of one height, broken where the data ends. */
export type ContourLine = {
  /** In the unit that was asked for: a round number. */
  readonly value: number
  /** [lon, lat] of its corners. */
  readonly places: readonly (readonly [lon: number, lat: number])[]
}

export type ContourUnit = 'ft' | 'm'

const LARGEST_SIDE = 400
/** Lines from the lowest to the highest ground, at most. */
const MOST_LEVELS = 10
const SHORTEST_CORNERS = 12
const intervals = [5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000]

/**
 * A few lines of equal height over a district: hints of its hills, too coarse to read a height from.
 *
 * @param unit the lines stand at round numbers of this
 */
export function contourLines(grid: HeightGrid, unit: ContourUnit): { interval: number; lines: ContourLine[] } {
  const stride = Math.ceil(Math.max(grid.rowCount, grid.columnCount) / LARGEST_SIDE)
  const width = Math.ceil(grid.columnCount / stride), height = Math.ceil(grid.rowCount / stride)
  const values: number[] = []
  let low = Infinity, high = -Infinity
  for (let row = 0; row < height; row++) {
    for (let column = 0; column < width; column++) {
      const height_m = findSampleM(grid, row * stride, column * stride)
      const value = height_m === undefined ? NaN : unit === 'ft' ? feetFromMetres(height_m) : height_m
      values.push(value)
      if (Number.isNaN(value)) continue
      low = Math.min(low, value)
      high = Math.max(high, value)
    }
  }
  const interval = intervals.find((step) => (high - low) / step <= MOST_LEVELS) ?? 10_000
  const levels: number[] = []
  for (let level = Math.ceil(low / interval) * interval; level < high; level += interval) if (level > low) levels.push(level)
  if (width < 2 || height < 2 || levels.length === 0) return { interval, lines: [] }
  // The library puts the first sample at a half.
  const isInside = ([x = 0, y = 0]: readonly number[]) => {
    if (!(x > 0.5 && y > 0.5 && x < width - 0.5 && y < height - 0.5)) return false
    // Beside a gap the library runs along the last samples: what touches one counts as outside.
    for (let row = Math.ceil(y - 1.5); row <= Math.floor(y + 0.5); row++)
      for (let column = Math.ceil(x - 1.5); column <= Math.floor(x + 0.5); column++) if (Number.isNaN(values[row * width + column] ?? NaN)) return false
    return true
  }
  const placeOf = ([x = 0, y = 0]: readonly number[]) =>
    [grid.bounds.west + (x - 0.5) * stride * columnStep_deg(grid), grid.bounds.north - (y - 0.5) * stride * rowStep_deg(grid)] as const
  const trace = contours().size([width, height])
  const lines = levels.flatMap((level) => trace.contour(values, level).coordinates.flat().flatMap((ring) =>
    runsOf(ring, isInside).filter((run) => run.length >= SHORTEST_CORNERS).map((run): ContourLine => ({ value: level, places: run.map(placeOf) }))))
  return { interval, lines }
}

/** Pieces of a closed ring whose corners all pass; the ring opens where one does not, so that no piece is cut at its seam. */
function runsOf(ring: readonly (readonly number[])[], passes: (corner: readonly number[]) => boolean): (readonly number[])[][] {
  const seam = ring.findIndex((corner) => !passes(corner))
  if (seam < 0) return [[...ring]]
  const open = [...ring.slice(seam, -1), ...ring.slice(0, seam + 1)]
  const runs: (readonly number[])[][] = []
  let run: (readonly number[])[] = []
  for (const corner of open) {
    if (passes(corner)) { run.push(corner); continue }
    if (run.length > 0) runs.push(run)
    run = []
  }
  return run.length > 0 ? [...runs, run] : runs
}

