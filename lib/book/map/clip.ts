import type { Box } from './paper-view'

/** x, y, x, y … */
export type FlatLine = readonly number[]

/**
 * The parts of a line inside a box, by Liang and Barsky's way of cutting each piece.
 *
 * @returns lines of two points or more; none where it passes the box by
 */
export function clipLine(line: FlatLine, { left, top, right, bottom }: Box): number[][] {
  const parts: number[][] = []
  let part: number[] = []
  const end = () => {
    if (part.length >= 4) parts.push(part)
    part = []
  }
  for (let i = 0; i + 3 < line.length; i += 2) {
    const x = line[i] ?? 0, y = line[i + 1] ?? 0, dx = (line[i + 2] ?? 0) - x, dy = (line[i + 3] ?? 0) - y
    let from = 0, to = 1
    const isIn = ([[-dx, x - left], [dx, right - x], [-dy, y - top], [dy, bottom - y]] as const).every(([p, q]) => {
      if (p === 0) return q >= 0
      const t = q / p
      if (p < 0) from = Math.max(from, t)
      else to = Math.min(to, t)
      return from <= to
    })
    if (!isIn) {
      end()
      continue
    }
    if (from > 0 || part.length === 0) {
      end()
      part.push(x + from * dx, y + from * dy)
    }
    part.push(x + to * dx, y + to * dy)
    if (to < 1) end()
  }
  end()
  return parts
}

/**
 * A ring cut to a box, by Sutherland and Hodgman: an outline to be filled, whose edge runs along the box where it was cut.
 *
 * @returns as x, y, x, y …; empty where nothing is left
 */
export function clipRing(ring: FlatLine, { left, top, right, bottom }: Box): number[] {
  let points = [...ring]
  const sides: readonly (readonly [0 | 1, number, 1 | -1])[] = [[0, left, 1], [0, right, -1], [1, top, 1], [1, bottom, -1]]
  for (const [axis, edge, sign] of sides) {
    const kept: number[] = []
    for (let i = 0; i + 1 < points.length; i += 2) {
      const j = (i + 2) % points.length
      const a = [points[i] ?? 0, points[i + 1] ?? 0] as const, b = [points[j] ?? 0, points[j + 1] ?? 0] as const
      const aIn = sign * (a[axis] - edge) >= 0, bIn = sign * (b[axis] - edge) >= 0
      if (aIn) kept.push(a[0], a[1])
      if (aIn !== bIn) {
        const t = (edge - a[axis]) / (b[axis] - a[axis])
        kept.push(a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1]))
      }
    }
    points = kept
  }
  return points.length >= 6 ? points : []
}

/** Leaves out points nearer than so much to the last one kept; the ends stay. */
export function thinned(line: FlatLine, nearest: number): number[] {
  const kept: number[] = []
  let x = Infinity, y = Infinity
  for (let i = 0; i + 1 < line.length; i += 2) {
    const nextX = line[i] ?? 0, nextY = line[i + 1] ?? 0
    const isLast = i + 3 >= line.length
    if (!isLast && Math.hypot(nextX - x, nextY - y) < nearest) continue
    kept.push(nextX, nextY)
    x = nextX
    y = nextY
  }
  return kept
}
