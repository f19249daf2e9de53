import { distanceM, METRES_PER_DEGREE, type Point } from '../geo'
import { DEGREES_E7 } from '../osm'
import { feetFromMetres } from '../units'
import { flagsOfEdge, type RoadGraph } from './road-graph'
import { roadFlag } from './road-flags'
import { nameOfEdge } from './route-limits'

/** Where a line over the ground crosses a road. */
export type RoadCrossing = {
  /** Level feet along the line. */
  readonly at_ft: number
  readonly point: Point
  /** Empty where the road has none. */
  readonly name: string
}

/** A line that meets a road more sharply runs along it rather than over it. Assumed. */
const LEAST_SINE = 0.5
/** Pieces of one road so near each other are crossed once. */
const SAME_PLACE_FT = 30

/**
 * Where a line over the ground, such as a hose lay, crosses roads.
 *
 * A line along a road does not cross it: angles under 30° do not count, nor do roads in a tunnel or on a bridge, where
 * the line may pass above or below. Side roads that only meet a road the line runs along are not found.
 *
 * @param points two or more corners of the line
 * @returns by rising distance
 */
export function findCrossings(graph: RoadGraph, points: readonly Point[]): RoadCrossing[] {
  const { tree, edge: edgeOf, shapePoint, lonScaleFactor } = graph.segments
  if (!tree) return []
  const crossings: RoadCrossing[] = []
  let far_ft = 0
  points.forEach((from, i) => {
    const to = points[i + 1]
    if (!to) return
    const leg_ft = feetFromMetres(distanceM(from, to))
    const [x1, x2] = [from.lon * lonScaleFactor, to.lon * lonScaleFactor]
    for (const segment of tree.search(Math.min(x1, x2), Math.min(from.lat, to.lat), Math.max(x1, x2), Math.max(from.lat, to.lat))) {
      const edge = edgeOf[segment] ?? 0
      if (flagsOfEdge(graph, edge) & (roadFlag.bridge | roadFlag.tunnel)) continue
      const at = shapePoint[segment] ?? 0
      const share = crossingShare(from, to, shapePointAt(graph, at), shapePointAt(graph, at + 1))
      if (share === undefined) continue
      crossings.push({ at_ft: far_ft + share * leg_ft, point: { lat: from.lat + share * (to.lat - from.lat), lon: from.lon + share * (to.lon - from.lon) }, name: nameOfEdge(graph, edge) })
    }
    far_ft += leg_ft
  })
  crossings.sort((a, b) => a.at_ft - b.at_ft)
  return crossings.filter(({ at_ft, name }, i) => {
    const before = crossings[i - 1]
    return !before || at_ft - before.at_ft > SAME_PLACE_FT || name !== before.name
  })
}

const shapePointAt = (graph: RoadGraph, i: number): Point => ({ lat: (graph.shapeLatE7[i] ?? 0) / DEGREES_E7, lon: (graph.shapeLonE7[i] ?? 0) / DEGREES_E7 })

/** Share of a–b at which c–d crosses it, on the plane that touches the earth at a; undefined where it does not, or runs along it. */
function crossingShare(a: Point, b: Point, c: Point, d: Point): number | undefined {
  const perLon = METRES_PER_DEGREE * Math.cos((a.lat * Math.PI) / 180)
  const plane = ({ lat, lon }: Point) => ({ x: (lon - a.lon) * perLon, y: (lat - a.lat) * METRES_PER_DEGREE })
  const [p, r, q, e] = [plane(a), plane(b), plane(c), plane(d)]
  const line = { x: r.x - p.x, y: r.y - p.y }, road = { x: e.x - q.x, y: e.y - q.y }
  const cross = line.x * road.y - line.y * road.x
  const lengths = Math.hypot(line.x, line.y) * Math.hypot(road.x, road.y)
  if (lengths === 0 || Math.abs(cross) < LEAST_SINE * lengths) return undefined
  const t = ((q.x - p.x) * road.y - (q.y - p.y) * road.x) / cross
  const u = ((q.x - p.x) * line.y - (q.y - p.y) * line.x) / cross
  return t > 0 && t < 1 && u >= 0 && u <= 1 ? t : undefined
}
