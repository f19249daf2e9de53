import { distanceM, type Point } from '@/lib/geo'

const halfway = (a: Point, b: Point): Point => ({ lat: (a.lat + b.lat) / 2, lon: (a.lon + b.lon) / 2 })

/** The way with one more point in the middle of its longest leg. */
export function withHalfway(points: readonly Point[]): Point[] {
  let longest = 0, longest_m = -1
  points.forEach((point, i) => {
    const next = points[i + 1]
    const length_m = next ? distanceM(point, next) : -1
    if (length_m > longest_m) [longest, longest_m] = [i, length_m]
  })
  const from = points[longest], to = points[longest + 1]
  return from && to ? points.toSpliced(longest + 1, 0, halfway(from, to)) : [...points]
}

/** The way with a point put where it makes it least longer, never before its begin or behind its end. */
export function withPoint(points: readonly Point[], point: Point): Point[] {
  let best = 0, best_m = Infinity
  points.forEach((from, i) => {
    const to = points[i + 1]
    if (!to) return
    const more_m = distanceM(from, point) + distanceM(point, to) - distanceM(from, to)
    if (more_m < best_m) [best, best_m] = [i, more_m]
  })
  return points.toSpliced(best + 1, 0, point)
}
