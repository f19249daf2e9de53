import type { Spot } from '../frame'
import { isInRing, ringArea, type Ring } from './polygon'

export type Area = { outer: Ring; holes: Ring[] }
type Window = { west: number; south: number; east: number; north: number; cell_m: number }

/**
 * Outlines of where `value` is above 0 (marching squares, edges cut in proportion).
 * Outside the window counts as below, so that every outline closes. Areas come largest first.
 */
export function areasWhere(value: (spot: Spot) => number, { west, south, east, north, cell_m }: Window): Area[] {
  const columns = Math.floor((east - west) / cell_m) + 1
  const rows = Math.floor((north - south) / cell_m) + 1
  const grid = new Float64Array(columns * rows)
  for (let j = 0; j < rows; j++)
    for (let i = 0; i < columns; i++) {
      const isEdge = i === 0 || j === 0 || i === columns - 1 || j === rows - 1
      const v = value({ x: west + i * cell_m, y: south + j * cell_m })
      grid[j * columns + i] = isEdge ? Math.min(v, -1e-6) : v === 0 ? -1e-6 : v
    }
  // An outline spot lies on one grid edge: 2k is the edge east of corner k, 2k + 1 the one north of it.
  const spotOf = (edge: number): Spot => {
    const k = edge >> 1
    const other = edge % 2 === 0 ? k + 1 : k + columns
    const share = grid[k]! / (grid[k]! - grid[other]!)
    const [i, j] = [k % columns, Math.floor(k / columns)]
    return edge % 2 === 0 ? { x: west + (i + share) * cell_m, y: south + j * cell_m } : { x: west + i * cell_m, y: south + (j + share) * cell_m }
  }
  const next = new Map<number, number>()
  for (let j = 0; j + 1 < rows; j++)
    for (let i = 0; i + 1 < columns; i++) {
      const k = j * columns + i
      const [a, b, c, d] = [grid[k]! > 0, grid[k + 1]! > 0, grid[k + columns + 1]! > 0, grid[k + columns]! > 0]
      const [bottom, right, top, left] = [2 * k, 2 * (k + 1) + 1, 2 * (k + columns), 2 * k + 1]
      // Inside stays to the left of the way around.
      const pairs: [number, number][] = []
      const shape = (a ? 1 : 0) + (b ? 2 : 0) + (c ? 4 : 0) + (d ? 8 : 0)
      if (shape === 1) pairs.push([bottom, left])
      if (shape === 2) pairs.push([right, bottom])
      if (shape === 3) pairs.push([right, left])
      if (shape === 4) pairs.push([top, right])
      if (shape === 5) pairs.push([bottom, left], [top, right])
      if (shape === 6) pairs.push([top, bottom])
      if (shape === 7) pairs.push([top, left])
      if (shape === 8) pairs.push([left, top])
      if (shape === 9) pairs.push([bottom, top])
      if (shape === 10) pairs.push([right, bottom], [left, top])
      if (shape === 11) pairs.push([right, top])
      if (shape === 12) pairs.push([left, right])
      if (shape === 13) pairs.push([bottom, right])
      if (shape === 14) pairs.push([left, bottom])
      for (const [from, to] of pairs) next.set(from, to)
    }
  const rings: Spot[][] = []
  const seen = new Set<number>()
  for (const start of next.keys()) {
    if (seen.has(start)) continue
    const ring: Spot[] = []
    for (let at: number | undefined = start; at !== undefined && !seen.has(at); at = next.get(at)) {
      seen.add(at)
      ring.push(spotOf(at))
    }
    if (ring.length > 3) rings.push(ring)
  }
  const outers = rings.filter((ring) => ringArea(ring) > 0).map((outer): Area => ({ outer, holes: [] }))
  outers.sort((p, q) => ringArea(q.outer) - ringArea(p.outer))
  for (const hole of rings.filter((ring) => ringArea(ring) < 0)) {
    const around = outers.filter(({ outer }) => isInRing(outer, hole[0]!))
    around[around.length - 1]?.holes.push(hole)
  }
  return outers
}

/** A rounder ring with about a spot every `step` metres. */
export function roundedRing(ring: Ring, rounds: number): Spot[] {
  let now = [...ring]
  for (let round = 0; round < rounds; round++)
    now = now.map((here, i) => {
      const [a, b] = [now[(i + now.length - 1) % now.length]!, now[(i + 1) % now.length]!]
      return { x: (a.x + 2 * here.x + b.x) / 4, y: (a.y + 2 * here.y + b.y) / 4 }
    })
  return now
}
