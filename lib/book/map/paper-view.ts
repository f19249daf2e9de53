import { METRES_PER_DEGREE, type Bounds, type Point } from '../../geo'

/** A place on paper, in points (1/72 inch), y downwards. */
export type Spot = { readonly x: number; readonly y: number }

/** A rectangle on paper, in points. */
export type Box = { readonly left: number; readonly top: number; readonly right: number; readonly bottom: number }

/** A part of the ground as it lies on paper: north up, one scale in both directions, true in its middle. */
export type PaperView = {
  readonly box: Box
  readonly centre: Point
  readonly metresPerPoint: number
}

const radians = (degrees: number): number => (degrees * Math.PI) / 180

/**
 * A view that shows all the points with some room around them.
 *
 * @param points          what must be in sight; one or more
 * @param box             where on the paper
 * @param leastAcross_m   never closer than so many metres over the box's shorter side
 * @param room            points of paper left free on each side
 * @throws RangeError if there are no points or the room fills the box
 */
export function fitView(points: readonly Point[], box: Box, { leastAcross_m = 400, room = 40 }: { readonly leastAcross_m?: number; readonly room?: number } = {}): PaperView {
  const [first] = points
  if (!first) throw new RangeError('points have length 0, must be one or more')
  const lats = points.map(({ lat }) => lat), lons = points.map(({ lon }) => lon)
  const [south, north, west, east] = [Math.min(...lats), Math.max(...lats), Math.min(...lons), Math.max(...lons)]
  const centre = { lat: (south + north) / 2, lon: (west + east) / 2 }
  const across = box.right - box.left, down = box.bottom - box.top
  const [freeAcross, freeDown] = [across - 2 * room, down - 2 * room]
  if (!(freeAcross > 0 && freeDown > 0)) throw new RangeError(`room is ${room}, must be less than half of the box`)
  const metresPerPoint = Math.max(
    ((east - west) * METRES_PER_DEGREE * Math.cos(radians(centre.lat))) / freeAcross,
    ((north - south) * METRES_PER_DEGREE) / freeDown,
    leastAcross_m / Math.min(across, down),
  )
  return { box, centre, metresPerPoint }
}

/** Where a place of the ground lies on the paper. Flat: over a district it is off by less than a line's width. */
export function spotOf({ box, centre, metresPerPoint }: PaperView, { lat, lon }: Point): Spot {
  const perPoint = METRES_PER_DEGREE / metresPerPoint
  return {
    x: (box.left + box.right) / 2 + (lon - centre.lon) * Math.cos(radians(centre.lat)) * perPoint,
    y: (box.top + box.bottom) / 2 - (lat - centre.lat) * perPoint,
  }
}

/** The ground within the view. */
export function groundOf({ box, centre, metresPerPoint }: PaperView): Bounds {
  const halfLat = ((box.bottom - box.top) / 2) * (metresPerPoint / METRES_PER_DEGREE)
  const halfLon = ((box.right - box.left) / 2) * (metresPerPoint / (METRES_PER_DEGREE * Math.cos(radians(centre.lat))))
  return { south: centre.lat - halfLat, north: centre.lat + halfLat, west: centre.lon - halfLon, east: centre.lon + halfLon }
}
