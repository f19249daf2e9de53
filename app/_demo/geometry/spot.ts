import type { Spot } from '../frame'

export const spot = (x: number, y: number): Spot => ({ x, y })

/** By square root, which is exact in IEEE 754, so the district is the same everywhere. */
export const gap = (a: Spot, b: Spot): number => Math.sqrt((a.x - b.x) ** 2 + (a.y - b.y) ** 2)

export const between = (a: Spot, b: Spot, share: number): Spot => ({ x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share })

/** Unit vector from a to b; east where they coincide. */
export function heading(a: Spot, b: Spot): Spot {
  const length = gap(a, b)
  return length > 0 ? { x: (b.x - a.x) / length, y: (b.y - a.y) / length } : { x: 1, y: 0 }
}

/** `ahead` metres along the heading and `left` metres to its left. */
export const offset = (from: Spot, along: Spot, ahead: number, left: number): Spot => ({
  x: from.x + along.x * ahead - along.y * left,
  y: from.y + along.y * ahead + along.x * left,
})
