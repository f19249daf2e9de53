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
