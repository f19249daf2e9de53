/** A place on the ground, WGS 84 degrees. GeoJSON's [lon, lat] stops at the exchange code. */
export type Point = { readonly lat: number; readonly lon: number }

export type Bounds = { readonly south: number; readonly west: number; readonly north: number; readonly east: number }

/** Mean radius of the earth, IUGG R1, in metres. */
export const EARTH_RADIUS_M = 6_371_008.8

/** Along a meridian of that sphere, in metres. */
export const METRES_PER_DEGREE = (EARTH_RADIUS_M * Math.PI) / 180

const radians = (degrees: number): number => (degrees * Math.PI) / 180

/**
 * Great-circle distance on a sphere, by the haversine formula.
 *
 * @returns distance in metres; within 0.6 % of the ellipsoid
 */
export function distanceM(a: Point, b: Point): number {
  const dLat = radians(b.lat - a.lat)
  const dLon = radians(b.lon - a.lon)
  const h = Math.sin(dLat / 2) ** 2 + Math.cos(radians(a.lat)) * Math.cos(radians(b.lat)) * Math.sin(dLon / 2) ** 2
  return 2 * EARTH_RADIUS_M * Math.asin(Math.min(1, Math.sqrt(h)))
}

/** Metres along a line to each of its points: 0 first, the whole length last. */
export function alongM(points: readonly Point[]): number[] {
  const along_m: number[] = []
  points.forEach((point, i) => {
    const before = points[i - 1]
    along_m.push(before ? (along_m[i - 1] ?? 0) + distanceM(before, point) : 0)
  })
  return along_m
}

/**
 * The point that far along a line, by its length.
 *
 * @param points  one or more
 * @param share   of the whole length, 0 to 1; beyond it the end
 * @param along_m of the same line, where it is at hand
 * @throws RangeError if the line has no point
 */
export function pointAlong(points: readonly Point[], share: number, along_m: readonly number[] = alongM(points)): Point {
  const first = points[0]
  if (!first) throw new RangeError('points have length 0, must be one or more')
  const at_m = Math.min(1, Math.max(0, share)) * (along_m.at(-1) ?? 0)
  let i = 1
  while (i < points.length - 1 && (along_m[i] ?? 0) < at_m) i++
  const from = points[i - 1] ?? first, to = points[i]
  if (!to) return from
  const start_m = along_m[i - 1] ?? 0
  const length_m = (along_m[i] ?? 0) - start_m
  const part = length_m > 0 ? Math.min(1, (at_m - start_m) / length_m) : 0
  return { lat: from.lat + part * (to.lat - from.lat), lon: from.lon + part * (to.lon - from.lon) }
}

/**
 * How near a line passes to a point, and where along it. Flat geometry about the point: for distances that matter on a road.
 *
 * @param points two or more
 * @returns metres from the point, and the share of the line's length, 0 to 1, at which it is nearest
 * @throws RangeError if the line has no two points
 */
export function nearestOnLine(points: readonly Point[], to: Point): { distance_m: number; share: number } {
  if (points.length < 2) throw new RangeError(`points have length ${points.length}, must be two or more`)
  const east = METRES_PER_DEGREE * Math.cos(radians(to.lat))
  const along_m = alongM(points)
  let nearest = { distance_m: Infinity, at_m: 0 }
  for (let i = 1; i < points.length; i++) {
    const [a, b] = [points[i - 1]!, points[i]!]
    const [ax, ay, bx, by] = [(a.lon - to.lon) * east, (a.lat - to.lat) * METRES_PER_DEGREE, (b.lon - to.lon) * east, (b.lat - to.lat) * METRES_PER_DEGREE]
    const squared = (bx - ax) ** 2 + (by - ay) ** 2
    const part = squared > 0 ? Math.min(1, Math.max(0, -(ax * (bx - ax) + ay * (by - ay)) / squared)) : 0
    const distance_m = Math.hypot(ax + part * (bx - ax), ay + part * (by - ay))
    if (distance_m < nearest.distance_m) nearest = { distance_m, at_m: along_m[i - 1]! + part * (along_m[i]! - along_m[i - 1]!) }
  }
  const whole_m = along_m.at(-1)!
  return { distance_m: nearest.distance_m, share: whole_m > 0 ? nearest.at_m / whole_m : 0 }
}

/** Smallest bounds around the points, or undefined when there are none. Not for districts across the antimeridian. */
export function findBounds(points: Iterable<Point>): Bounds | undefined {
  let south = Infinity, west = Infinity, north = -Infinity, east = -Infinity
  for (const { lat, lon } of points) {
    south = Math.min(south, lat); north = Math.max(north, lat)
    west = Math.min(west, lon); east = Math.max(east, lon)
  }
  return south <= north ? { south, west, north, east } : undefined
}

/** Whether a place lies within bounds, edges included. Not for bounds across the antimeridian. */
export const isInside = (bounds: Bounds, { lat, lon }: Point): boolean =>
  lat >= bounds.south && lat <= bounds.north && lon >= bounds.west && lon <= bounds.east

/** Whether a place lies in a ring of points, open or closed, by the even-odd rule in degrees. Not for rings across the antimeridian. */
export function isInRing(ring: readonly Point[], { lat, lon }: Point): boolean {
  let isIn = false
  for (let i = 0, before = ring.length - 1; i < ring.length; before = i++) {
    const a = ring[i], b = ring[before]
    if (a && b && a.lat > lat !== b.lat > lat && lon < ((b.lon - a.lon) * (lat - a.lat)) / (b.lat - a.lat) + a.lon) isIn = !isIn
  }
  return isIn
}
