import { HEIGHT_M, WIDTH_M, type Spot } from '../frame'
import { gap, spot } from '../geometry/spot'
import type { HeightField } from '../land/height-field'

const CELL_M = 40
const MARGIN_M = 400
const COLUMNS = (WIDTH_M + 2 * MARGIN_M) / CELL_M
const ROWS = (HEIGHT_M + 2 * MARGIN_M) / CELL_M

/** Sixteen ways out of a cell, so that roads turn gently. */
const STEPS: readonly (readonly [number, number])[] = [
  [1, 0], [-1, 0], [0, 1], [0, -1], [1, 1], [-1, 1], [1, -1], [-1, -1], [2, 1], [1, 2], [-2, 1], [-1, 2], [2, -1], [1, -2], [-2, -1], [-1, -2],
]

export type WayFinder = {
  /** Marks cells under a line with the cost of entering them, in metres of detour. */
  avoid(line: readonly Spot[], reach_m: number, cost_m: number): void
  /** The way a road builder would take between two spots. */
  find(from: Spot, to: Spot, grade: number): Spot[]
}

/**
 * Lays roads as people did: short, gentle, dry. A step costs its length and more the
 * steeper it is against the `grade` the road can bear; water and other roads cost a detour.
 */
export function wayFinder(field: HeightField): WayFinder {
  const height = new Float64Array(COLUMNS * ROWS)
  const toll = new Float64Array(COLUMNS * ROWS)
  const middle = (k: number): Spot => spot((k % COLUMNS) * CELL_M - MARGIN_M + CELL_M / 2, Math.floor(k / COLUMNS) * CELL_M - MARGIN_M + CELL_M / 2)
  for (let k = 0; k < height.length; k++) height[k] = field.at(middle(k))
  const cellAt = ({ x, y }: Spot): number => {
    const i = Math.max(0, Math.min(COLUMNS - 1, Math.floor((x + MARGIN_M) / CELL_M)))
    const j = Math.max(0, Math.min(ROWS - 1, Math.floor((y + MARGIN_M) / CELL_M)))
    return j * COLUMNS + i
  }

  const avoid = (line: readonly Spot[], reach_m: number, cost_m: number): void => {
    const reach = Math.ceil(reach_m / CELL_M)
    for (const here of line) {
      const at = cellAt(here)
      for (let dj = -reach; dj <= reach; dj++)
        for (let di = -reach; di <= reach; di++) {
          const [i, j] = [(at % COLUMNS) + di, Math.floor(at / COLUMNS) + dj]
          if (i < 0 || j < 0 || i >= COLUMNS || j >= ROWS) continue
          const k = j * COLUMNS + i
          if (gap(middle(k), here) <= Math.max(reach_m, CELL_M * 0.7)) toll[k] = Math.max(toll[k]!, cost_m)
        }
    }
  }

  const find = (from: Spot, to: Spot, grade: number): Spot[] => {
    const [start, goal] = [cellAt(from), cellAt(to)]
    const cost = new Float64Array(COLUMNS * ROWS).fill(Infinity)
    const came = new Int32Array(COLUMNS * ROWS).fill(-1)
    const done = new Uint8Array(COLUMNS * ROWS)
    const open: { k: number; rank: number }[] = []
    const push = (k: number, rank: number): void => {
      let at = open.push({ k, rank }) - 1
      while (at > 0 && open[(at - 1) >> 1]!.rank > rank) {
        ;[open[at], open[(at - 1) >> 1]] = [open[(at - 1) >> 1]!, open[at]!]
        at = (at - 1) >> 1
      }
    }
    const pop = (): number => {
      const top = open[0]!.k
      const last = open.pop()!
      if (open.length > 0) {
        open[0] = last
        for (let at = 0; ; ) {
          const left = at * 2 + 1
          if (left >= open.length) break
          const child = left + 1 < open.length && open[left + 1]!.rank < open[left]!.rank ? left + 1 : left
          if (open[child]!.rank >= open[at]!.rank) break
          ;[open[at], open[child]] = [open[child]!, open[at]!]
          at = child
        }
      }
      return top
    }
    cost[start] = 0
    push(start, 0)
    while (open.length > 0) {
      const k = pop()
      if (done[k] === 1) continue
      done[k] = 1
      if (k === goal) break
      const [i, j] = [k % COLUMNS, Math.floor(k / COLUMNS)]
      for (const [di, dj] of STEPS) {
        const [x, y] = [i + di, j + dj]
        if (x < 0 || y < 0 || x >= COLUMNS || y >= ROWS) continue
        const other = y * COLUMNS + x
        const run = Math.sqrt(di * di + dj * dj) * CELL_M
        const slope = (height[other]! - height[k]!) / run
        const tolls = Math.max(0, toll[other]! - toll[k]!) + (toll[other]! > 0 ? run * 0.8 : 0)
        const total = cost[k]! + run * (1 + (slope / grade) ** 2) + tolls
        if (total < cost[other]!) {
          cost[other] = total
          came[other] = k
          push(other, total + gap(middle(other), to))
        }
      }
    }
    const cells: Spot[] = []
    for (let k = came[goal]!; k !== -1 && k !== start; k = came[k]!) cells.push(middle(k))
    return [from, ...cells.reverse(), to]
  }

  return { avoid, find }
}
