import { HEIGHT_M, WIDTH_M, type Spot } from '../frame'
import { nearestOnSegment } from '../geometry/line'
import { gap } from '../geometry/spot'
import { erode } from './erode'
import type { Grid } from './grid'
import { noise, purpose, roughNoise } from './noise'
import type { Stream } from './streams'

/** Ground is known this far outside the frame, so that edges have a slope too. */
const MARGIN_M = 600
const CELL_M = 40
const grid: Grid = { columns: (WIDTH_M + 2 * MARGIN_M) / CELL_M + 1, rows: (HEIGHT_M + 2 * MARGIN_M) / CELL_M + 1, cell_m: CELL_M }

export type HeightField = {
  /** Ground in metres; inside the frame and a little around it. */
  at(spot: Spot): number
  /** Steepest slope, as rise over run. */
  slopeAt(spot: Spot): number
}

type Below = { bed_m: number; /** Metres beyond the edge of the valley floor; negative on the floor. */ beyond_m: number; away_m: number }

/** The stream that rules a place: the one that would leave the lowest ground there. */
function streamBelow(streams: readonly Stream[], x: number, y: number): Below {
  let best: Below = { bed_m: 0, beyond_m: Infinity, away_m: Infinity }
  let lowest = Infinity
  for (const { centre, bed_m, floor_m } of streams) {
    let away = Infinity, bed = 0, floor = 0
    for (let i = 0; i < centre.length - 1; i++) {
      const a = centre[i]!
      if (Math.abs(a.x - x) > away + 60 || Math.abs(a.y - y) > away + 60) continue
      const { spot, share } = nearestOnSegment(a, centre[i + 1]!, { x, y })
      const d = gap(spot, { x, y })
      if (d >= away) continue
      away = d
      bed = bed_m[i]! + (bed_m[i + 1]! - bed_m[i]!) * share
      floor = floor_m[i]! + (floor_m[i + 1]! - floor_m[i]!) * share
    }
    const beyond = away - floor * (1 + 0.45 * noise(purpose.hills, x, y, 500))
    const level = bed + 0.2 * Math.max(0, beyond)
    if (level < lowest) [lowest, best] = [level, { bed_m: bed, beyond_m: beyond, away_m: away }]
  }
  return best
}

const eased = (t: number): number => (t <= 0 ? 0 : t >= 1 ? 1 : t * t * (3 - 2 * t))

/** Lowers the ground under each stream where it would have to flow uphill. */
function carve(streams: readonly Stream[], ground: Float64Array): void {
  for (const { water } of streams) {
    let level = Infinity
    for (const { x, y } of water) {
      const [i, j] = [Math.floor((x + MARGIN_M) / CELL_M), Math.floor((y + MARGIN_M) / CELL_M)]
      if (i < 0 || j < 0 || i > grid.columns - 2 || j > grid.rows - 2) continue
      const corners = [j * grid.columns + i, j * grid.columns + i + 1, (j + 1) * grid.columns + i, (j + 1) * grid.columns + i + 1]
      level = Math.min(level, Math.max(...corners.map((k) => ground[k]!)))
      for (const k of corners) ground[k] = Math.min(ground[k]!, level)
    }
  }
}

/** Ground from valleys that were drawn and hills that were worn between them. */
export function buildHeightField(streams: readonly Stream[]): HeightField {
  const { columns, rows } = grid
  const ground = new Float64Array(columns * rows)
  const fixed = new Uint8Array(columns * rows)
  const lift = new Float64Array(columns * rows)
  const below: Below[] = []
  for (let k = 0; k < ground.length; k++) {
    const [x, y] = [(k % columns) * CELL_M - MARGIN_M, Math.floor(k / columns) * CELL_M - MARGIN_M]
    const under = streamBelow(streams, x, y)
    below.push(under)
    fixed[k] = under.beyond_m <= 0 || under.away_m < CELL_M * 0.75 ? 1 : 0
    ground[k] = under.bed_m + (fixed[k] === 1 ? 0 : 12 + 0.05 * under.beyond_m + 18 * roughNoise(purpose.knolls, x, y, 900))
    lift[k] = 2.3 * (1 + 0.8 * roughNoise(purpose.ridges, x + 5000, y, 2600))
  }
  erode(grid, ground, fixed, lift, 45, 0.14, 0.15)
  below.forEach(({ bed_m, beyond_m, away_m }, k) => {
    const floor = bed_m + 1.8 * eased(away_m / 120)
    const out = eased((beyond_m + 25) / 130)
    ground[k] = floor * (1 - out) + Math.max(floor, ground[k]!) * out
  })

  carve(streams, ground)

  const at = ({ x, y }: Spot): number => {
    const u = Math.max(0, Math.min(columns - 1.001, (x + MARGIN_M) / CELL_M))
    const v = Math.max(0, Math.min(rows - 1.001, (y + MARGIN_M) / CELL_M))
    const [i, j] = [Math.floor(u), Math.floor(v)]
    const [s, t] = [u - i, v - j]
    const cell = (di: number, dj: number): number => ground[(j + dj) * columns + i + di]!
    return (cell(0, 0) * (1 - s) + cell(1, 0) * s) * (1 - t) + (cell(0, 1) * (1 - s) + cell(1, 1) * s) * t
  }
  const slopeAt = ({ x, y }: Spot): number => {
    const east = (at({ x: x + 30, y }) - at({ x: x - 30, y })) / 60
    const north = (at({ x, y: y + 30 }) - at({ x, y: y - 30 })) / 60
    return Math.sqrt(east * east + north * north)
  }
  return { at, slopeAt }
}
