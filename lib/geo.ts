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

/** Smallest bounds around the points, or undefined when there are none. Not for districts across the antimeridian. */
export function findBounds(points: Iterable<Point>): Bounds | undefined {
  let south = Infinity, west = Infinity, north = -Infinity, east = -Infinity
  for (const { lat, lon } of points) {
    south = Math.min(south, lat); north = Math.max(north, lat)
    west = Math.min(west, lon); east = Math.max(east, lon)
  }
  return south <= north ? { south, west, north, east } : undefined
}

export const isInside = (bounds: Bounds, { lat, lon }: Point): boolean =>
  lat >= bounds.south && lat <= bounds.north && lon >= bounds.west && lon <= bounds.east
