import { METRES_PER_DEGREE, type Bounds, type Point } from '@/lib/geo'

/**
 * The demo district is an invented place. Its frame lies in the open North Atlantic,
 * more than 500 miles from any town, so that nobody takes it for a real one; the
 * latitude is that of plausible farm country. Places inside it are metres east and
 * north of the south-west corner.
 */
export type Spot = { readonly x: number; readonly y: number }

export const DEMO_SEED = 1847
export const WIDTH_M = 12_000
export const HEIGHT_M = 9_000

const SOUTH_WEST: Point = { lat: 43.02, lon: -41.58 }
/** Of longitude, at the middle of the frame (43.06° N), where the cosine is 0.7306. */
const METRES_PER_DEGREE_LON = METRES_PER_DEGREE * 0.7306

/** OpenStreetMap keeps seven decimals of a degree: about a centimetre. */
const rounded = (degrees: number): number => Math.round(degrees * 1e7) / 1e7

export const pointFromSpot = ({ x, y }: Spot): Point => ({
  lat: rounded(SOUTH_WEST.lat + y / METRES_PER_DEGREE),
  lon: rounded(SOUTH_WEST.lon + x / METRES_PER_DEGREE_LON),
})

export const spotFromPoint = ({ lat, lon }: Point): Spot => ({
  x: (lon - SOUTH_WEST.lon) * METRES_PER_DEGREE_LON,
  y: (lat - SOUTH_WEST.lat) * METRES_PER_DEGREE,
})

export function demoBounds(): Bounds {
  const { lat: south, lon: west } = pointFromSpot({ x: 0, y: 0 })
  const { lat: north, lon: east } = pointFromSpot({ x: WIDTH_M, y: HEIGHT_M })
  return { south, west, north, east }
}

export const isInFrame = ({ x, y }: Spot): boolean => x >= 0 && y >= 0 && x <= WIDTH_M && y <= HEIGHT_M
