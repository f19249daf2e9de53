import type { Box, Spot } from './paper-view'

/** Something to write, with the places where it may stand, best first. */
export type LabelWish<T> = {
  readonly what: T
  /** Of the text as it is set, in points. */
  readonly across: number
  readonly down: number
  /** Middle of the text; `angle` turns it about there, in radians. */
  readonly places: readonly (Spot & { readonly angle?: number })[]
}

export type PlacedLabel<T> = { readonly what: T; readonly x: number; readonly y: number; readonly angle: number; readonly box: Box }

/** Whether two boxes have nothing but an edge in common. */
export const isApart = (a: Box, b: Box): boolean => a.right <= b.left || b.right <= a.left || a.bottom <= b.top || b.bottom <= a.top

/** Box around a text about its middle, turned by an angle. */
export function boxAround({ x, y, angle = 0 }: Spot & { readonly angle?: number }, across: number, down: number): Box {
  const [cos, sin] = [Math.abs(Math.cos(angle)), Math.abs(Math.sin(angle))]
  const halfX = (cos * across + sin * down) / 2, halfY = (sin * across + cos * down) / 2
  return { left: x - halfX, right: x + halfX, top: y - halfY, bottom: y + halfY }
}

/**
 * Gives each label the first of its places where it lies whole within the frame and on nothing that stands there already;
 * what comes first in the list goes first. A label without such a place is left out, and returned as such.
 *
 * @param taken boxes nothing may lie on, say those of symbols
 */
export function placeLabels<T>(wishes: readonly LabelWish<T>[], frame: Box, taken: readonly Box[] = []): { placed: PlacedLabel<T>[]; left: T[] } {
  const full: Box[] = [...taken]
  const placed: PlacedLabel<T>[] = []
  const left: T[] = []
  for (const { what, across, down, places } of wishes) {
    const found = places.find((place) => {
      const box = boxAround(place, across, down)
      const isWhole = box.left >= frame.left && box.right <= frame.right && box.top >= frame.top && box.bottom <= frame.bottom
      return isWhole && full.every((other) => isApart(box, other))
    })
    if (!found) {
      left.push(what)
      continue
    }
    const box = boxAround(found, across, down)
    full.push(box)
    placed.push({ what, x: found.x, y: found.y, angle: found.angle ?? 0, box })
  }
  return { placed, left }
}

/** Middles of a text beside a symbol: right, left, below, above, then the corners, then the same further off. */
export function placesBeside({ x, y }: Spot, radius: number, across: number, down: number): Spot[] {
  const around = (gap: number): Spot[] => {
    const dx = radius + gap + across / 2, dy = radius + gap + down / 2
    return [
      { x: x + dx, y }, { x: x - dx, y }, { x, y: y + dy }, { x, y: y - dy },
      { x: x + dx, y: y + dy }, { x: x + dx, y: y - dy }, { x: x - dx, y: y + dy }, { x: x - dx, y: y - dy },
    ]
  }
  return [...around(1), ...around(6), ...around(16), ...around(30)]
}
