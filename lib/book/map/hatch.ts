import type { FlatLine } from './clip'

/**
 * Level lines that fill an area, so that it is told from others in grey: each runs from where it enters the rings to where
 * it leaves them, holes left out (even-odd rule).
 *
 * @param rings outer rings and holes, in any order
 * @param step  from one line to the next, above 0; all areas share one set of lines
 * @returns lines of two points
 */
export function hatchLines(rings: readonly FlatLine[], step: number): number[][] {
  let top = Infinity, bottom = -Infinity
  for (const ring of rings) for (let i = 1; i < ring.length; i += 2) {
    top = Math.min(top, ring[i] ?? 0)
    bottom = Math.max(bottom, ring[i] ?? 0)
  }
  const lines: number[][] = []
  for (let y = Math.ceil(top / step) * step; y <= bottom; y += step) {
    const crossings = rings.flatMap((ring) => crossingsOf(ring, y)).sort((a, b) => a - b)
    for (let i = 0; i + 1 < crossings.length; i += 2) {
      const from = crossings[i] ?? 0, to = crossings[i + 1] ?? 0
      if (to - from > 1) lines.push([from, y, to, y])
    }
  }
  return lines
}

function crossingsOf(ring: FlatLine, y: number): number[] {
  const found: number[] = []
  for (let i = 0; i + 1 < ring.length; i += 2) {
    const j = (i + 2) % ring.length
    const ax = ring[i] ?? 0, ay = ring[i + 1] ?? 0, bx = ring[j] ?? 0, by = ring[j + 1] ?? 0
    // Half open, so that a corner counts once.
    if ((ay <= y) !== (by <= y)) found.push(ax + ((y - ay) / (by - ay)) * (bx - ax))
  }
  return found
}
