import type { Spot } from '../frame'
import { findCrossing, type Line } from './line'

/** A ring is a line whose last spot joins its first; it is not repeated. */
export type Ring = Line

export function ringArea(ring: Ring): number {
  let twice = 0
  ring.forEach((a, i) => {
    const b = ring[(i + 1) % ring.length]!
    twice += a.x * b.y - b.x * a.y
  })
  return twice / 2
}

export function isInRing(ring: Ring, { x, y }: Spot): boolean {
  let inside = false
  for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
    const [a, b] = [ring[i]!, ring[j]!]
    if (a.y > y !== b.y > y && x < ((b.x - a.x) * (y - a.y)) / (b.y - a.y) + a.x) inside = !inside
  }
  return inside
}

export function ringsMeet(one: Ring, other: Ring): boolean {
  if (isInRing(one, other[0]!) || isInRing(other, one[0]!)) return true
  return one.some((a, i) => other.some((c, j) => findCrossing(a, one[(i + 1) % one.length]!, c, other[(j + 1) % other.length]!) !== undefined))
}

export function centreOf(ring: Ring): Spot {
  const sum = ring.reduce((total, { x, y }) => ({ x: total.x + x, y: total.y + y }), { x: 0, y: 0 })
  return { x: sum.x / ring.length, y: sum.y / ring.length }
}
