import { distanceM, METRES_PER_DEGREE, type Point } from '../geo'
import { DEGREES_E7 } from '../osm'
import { feetFromMetres } from '../units'
import type { RoadGraph } from './road-graph'

/** A place on a road. */
export type RoadPlace = {
  readonly edge: number
  /** How far along the edge as drawn, 0 to 1 of its length. */
  readonly share: number
  readonly point: Point
  /** From the place asked for. */
  readonly distance_ft: number
}

/** Roads that are as near as the nearest, to the accuracy of a pin: those that meet in one junction. */
const TIE_M = 0.5

type Hit = { segment: number; metres: number; t: number }

/**
 * The nearest place on a road that passes the test.
 *
 * Exact: the nearest box gives a first distance, then every segment within it is measured.
 */
export const findNearest = (graph: RoadGraph, point: Point, isWanted?: (edge: number) => boolean): RoadPlace | undefined =>
  nearestPlaces(graph, point, isWanted)[0]

/**
 * The nearest place, then places on other roads that are just as near: at a junction a
 * vehicle may leave by any of them.
 *
 * @param isWanted which edges count; all when left out
 * @returns nearest first; empty when no edge counts
 */
export function nearestPlaces(graph: RoadGraph, point: Point, isWanted: (edge: number) => boolean = () => true): RoadPlace[] {
  const { tree, edge: edgeOf, lonScaleFactor } = graph.segments
  if (!tree) return []
  const x = point.lon * lonScaleFactor, y = point.lat
  const [first] = tree.neighbors(x, y, 1, Infinity, (segment) => isWanted(edgeOf[segment] ?? 0))
  if (first === undefined) return []
  const measure = segmentMeasure(graph, point)
  let reach_m = measure(first).metres + TIE_M
  // The index squeezes longitudes by the district's middle latitude: look a little further than the distance itself.
  const cosine = Math.cos((point.lat * Math.PI) / 180)
  const reachY = (reach_m / METRES_PER_DEGREE) * 1.001
  const reachX = cosine > 0.01 ? (reachY * lonScaleFactor) / cosine : 360
  const hits: Hit[] = []
  for (const segment of tree.search(x - reachX, y - reachY, x + reachX, y + reachY, (found) => isWanted(edgeOf[found] ?? 0))) {
    const hit = measure(segment)
    if (hit.metres > reach_m) continue
    reach_m = Math.min(reach_m, hit.metres + TIE_M)
    hits.push(hit)
  }
  hits.sort((a, b) => a.metres - b.metres || a.segment - b.segment)
  const places = new Map<number, RoadPlace>()
  for (const hit of hits) {
    const edge = edgeOf[hit.segment] ?? 0
    if (hit.metres <= reach_m && !places.has(edge)) places.set(edge, placeOf(graph, edge, hit))
  }
  return [...places.values()]
}

/** Distance from a point to segments, on the plane that touches the earth at the point. */
function segmentMeasure({ shapeLatE7, shapeLonE7, segments }: RoadGraph, point: Point): (segment: number) => Hit {
  const perLon = METRES_PER_DEGREE * Math.cos((point.lat * Math.PI) / 180)
  return (segment) => {
    const i = segments.shapePoint[segment] ?? 0
    const ax = ((shapeLonE7[i] ?? 0) / DEGREES_E7 - point.lon) * perLon, ay = ((shapeLatE7[i] ?? 0) / DEGREES_E7 - point.lat) * METRES_PER_DEGREE
    const bx = ((shapeLonE7[i + 1] ?? 0) / DEGREES_E7 - point.lon) * perLon, by = ((shapeLatE7[i + 1] ?? 0) / DEGREES_E7 - point.lat) * METRES_PER_DEGREE
    const dx = bx - ax, dy = by - ay
    const squared = dx * dx + dy * dy
    const t = squared > 0 ? Math.min(1, Math.max(0, -(ax * dx + ay * dy) / squared)) : 0
    return { segment, metres: Math.hypot(ax + t * dx, ay + t * dy), t }
  }
}

const shapePointAt = (graph: RoadGraph, i: number): Point => ({ lat: (graph.shapeLatE7[i] ?? 0) / DEGREES_E7, lon: (graph.shapeLonE7[i] ?? 0) / DEGREES_E7 })

function placeOf(graph: RoadGraph, edge: number, { segment, metres, t }: Hit): RoadPlace {
  const at = graph.segments.shapePoint[segment] ?? 0
  const a = shapePointAt(graph, at), b = shapePointAt(graph, at + 1)
  const point = { lat: a.lat + t * (b.lat - a.lat), lon: a.lon + t * (b.lon - a.lon) }
  let along_m = distanceM(a, point)
  for (let i = graph.shapeStart[edge] ?? 0; i < at; i++) along_m += distanceM(shapePointAt(graph, i), shapePointAt(graph, i + 1))
  const length_ft = graph.edgeLength_ft[edge] ?? 0
  return { edge, share: length_ft > 0 ? Math.min(1, feetFromMetres(along_m) / length_ft) : 0, point, distance_ft: feetFromMetres(metres) }
}
