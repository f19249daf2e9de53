import type { Spot } from '../frame'
import { nearestOnSegment, resample } from '../geometry/line'
import { ringsMeet, type Ring } from '../geometry/polygon'
import { gap } from '../geometry/spot'

const CELL_M = 60
const keyOf = (i: number, j: number): number => (i + 100) * 4096 + j + 100

/** What stands where: lines to keep away from and rings already built, found by their cell. */
export class GroundIndex {
  readonly #lines = new Map<number, { a: Spot; b: Spot; wide_m: number }[]>()
  readonly #rings = new Map<number, Ring[]>()

  addLine(line: readonly Spot[], wide_m: number): void {
    for (let i = 0; i + 1 < line.length; i++) {
      const [a, b] = [line[i]!, line[i + 1]!]
      for (const key of cellsOf([a, b], CELL_M)) push(this.#lines, key, { a, b, wide_m })
    }
  }

  addRing(ring: Ring): void {
    for (const key of cellsOf(ring, 0)) push(this.#rings, key, ring)
  }

  /** Whether every corner (or, with a step, every spot of the outline) is at least `clear_m` from each line's edge, and the ring meets no other. */
  isFree(ring: Ring, clear_m: number, step_m?: number): boolean {
    for (const here of step_m === undefined ? ring : resample([...ring, ring[0]!], step_m))
      for (const { a, b, wide_m } of this.#lines.get(keyOf(Math.floor(here.x / CELL_M), Math.floor(here.y / CELL_M))) ?? [])
        if (gap(nearestOnSegment(a, b, here).spot, here) < wide_m + clear_m) return false
    return cellsOf(ring, 0).every((key) => (this.#rings.get(key) ?? []).every((other) => !ringsMeet(ring, other)))
  }
}

function push<T>(map: Map<number, T[]>, key: number, value: T): void {
  const list = map.get(key)
  if (list) list.push(value)
  else map.set(key, [value])
}

function cellsOf(spots: readonly Spot[], around_m: number): number[] {
  const [xs, ys] = [spots.map(({ x }) => x), spots.map(({ y }) => y)]
  const keys: number[] = []
  for (let i = Math.floor((Math.min(...xs) - around_m) / CELL_M); i <= Math.floor((Math.max(...xs) + around_m) / CELL_M); i++)
    for (let j = Math.floor((Math.min(...ys) - around_m) / CELL_M); j <= Math.floor((Math.max(...ys) + around_m) / CELL_M); j++) keys.push(keyOf(i, j))
  return keys
}
