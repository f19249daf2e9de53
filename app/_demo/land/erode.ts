import { fillDepressions } from './fill-depressions'
import type { Grid } from './grid'

/** Places of the eight neighbours and how far they are, in cells. */
const AROUND: readonly (readonly [di: number, dj: number, away: number])[] = [
  [1, 0, 1], [-1, 0, 1], [0, 1, 1], [0, -1, 1], [1, 1, Math.SQRT2], [-1, 1, Math.SQRT2], [1, -1, Math.SQRT2], [-1, -1, Math.SQRT2],
]

/** Creep is spread over passes, each far below the 0.25 at which it would ring. */
const CREEP_PASSES = 2

export type Drainage = { receiver: Int32Array; order: Int32Array; area_m2: Float64Array }

/** Steepest way down from each cell, the cells from mouths upward, and the area drained through each. */
function drainageOf({ columns, rows, cell_m }: Grid, ground: Float64Array): Drainage {
  const count = columns * rows
  const receiver = new Int32Array(count)
  const giversAt = new Int32Array(count + 1)
  for (let k = 0; k < count; k++) {
    const [i, j] = [k % columns, Math.floor(k / columns)]
    receiver[k] = k
    if (i === 0 || j === 0 || i === columns - 1 || j === rows - 1) continue
    let steepest = 0
    for (const [di, dj, away] of AROUND) {
      const other = k + di + dj * columns
      const fall = (ground[k]! - ground[other]!) / away
      if (fall > steepest) [steepest, receiver[k]] = [fall, other]
    }
  }
  for (let k = 0; k < count; k++) if (receiver[k] !== k) giversAt[receiver[k]! + 1]!++
  for (let k = 0; k < count; k++) giversAt[k + 1]! += giversAt[k]!
  const givers = new Int32Array(count)
  const next = giversAt.slice()
  for (let k = 0; k < count; k++) if (receiver[k] !== k) givers[next[receiver[k]!]!++] = k
  const order = new Int32Array(count)
  let filled = 0
  for (let k = 0; k < count; k++) if (receiver[k] === k) order[filled++] = k
  for (let read = 0; read < filled; read++) for (let g = giversAt[order[read]!]!; g < giversAt[order[read]! + 1]!; g++) order[filled++] = givers[g]!
  const area_m2 = new Float64Array(count).fill(cell_m * cell_m)
  for (let n = count - 1; n >= 0; n--) {
    const k = order[n]!
    if (receiver[k] !== k) area_m2[receiver[k]!]! += area_m2[k]!
  }
  return { receiver, order, area_m2 }
}

/**
 * Wears hillsides into ravines and spurs, as running water does: each cell is lifted, then
 * cut toward the cell it drains to in proportion to slope and the root of the area drained
 * (the stream-power law, solved implicitly from the mouths up), then softened by creep.
 *
 * @param ground changed in place
 * @param fixed  1 where the ground stays: the beds and floors that were drawn
 * @param lift   metres a round, by cell
 */
export function erode(grid: Grid, ground: Float64Array, fixed: Uint8Array, lift: Float64Array, rounds: number, cutting: number, creep: number): void {
  const { columns, rows, cell_m } = grid
  for (let round = 0; round < rounds; round++) {
    fillDepressions(grid, ground)
    const { receiver, order, area_m2 } = drainageOf(grid, ground)
    for (let n = 0; n < order.length; n++) {
      const k = order[n]!
      const down = receiver[k]!
      if (fixed[k] === 1 || down === k) continue
      const [di, dj] = [(down % columns) - (k % columns), Math.floor(down / columns) - Math.floor(k / columns)]
      const run = di !== 0 && dj !== 0 ? cell_m * Math.SQRT2 : cell_m
      const f = (cutting * Math.sqrt(area_m2[k]!)) / run
      ground[k] = (ground[k]! + lift[k]! + f * ground[down]!) / (1 + f)
    }
    for (let pass = 0; pass < CREEP_PASSES; pass++) {
      const before = ground.slice()
      for (let j = 1; j < rows - 1; j++)
        for (let i = 1; i < columns - 1; i++) {
          const k = j * columns + i
          if (fixed[k] === 1) continue
          ground[k] = before[k]! + creep * (before[k - 1]! + before[k + 1]! + before[k - columns]! + before[k + columns]! - 4 * before[k]!)
        }
    }
  }
}
