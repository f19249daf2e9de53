import { METRES_PER_DEGREE, type Point } from '@/lib/geo'

/**
 * A way with only the corners that matter: no corner left out lies further from the way that stays than the tolerance.
 *
 * The Douglas–Peucker method on a plane: the farthest corner from the straight line between the ends stays, and so on in both halves.
 */
export function simplifyWay(points: readonly Point[], tolerance_m: number): Point[] {
  const [first] = points
  const last = points[points.length - 1]
  if (points.length < 3 || !first || !last) return [...points]
  let farthest = 0, farthest_m = 0
  points.forEach((point, i) => {
    const off_m = offLineM(point, first, last)
    if (off_m > farthest_m) [farthest, farthest_m] = [i, off_m]
  })
  if (farthest_m <= tolerance_m) return [first, last]
  return [...simplifyWay(points.slice(0, farthest + 1), tolerance_m).slice(0, -1), ...simplifyWay(points.slice(farthest), tolerance_m)]
}


/** Distance of a place from the straight line between two others, no further than to its ends. */
function offLineM(point: Point, a: Point, b: Point): number {
  const scale = Math.cos((a.lat * Math.PI) / 180)
  const x = (point.lon - a.lon) * scale, y = point.lat - a.lat
  const dx = (b.lon - a.lon) * scale, dy = b.lat - a.lat
  const length = dx * dx + dy * dy
  const share = length > 0 ? Math.max(0, Math.min(1, (x * dx + y * dy) / length)) : 0
  return Math.hypot(x - share * dx, y - share * dy) * METRES_PER_DEGREE
}
