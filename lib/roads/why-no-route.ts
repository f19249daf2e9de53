import { issue, type Issue } from '../issue'
import { DEGREES_E7 } from '../osm'
import { arrivalsOverStops } from './search-legs'
import type { RoadPlace } from './find-nearest'
import { arcOfState, headOfArc, type RoadGraph } from './road-graph'
import { middleOfEdge, nameOfEdge, postedOnEdge } from './route-limits'
import { driveWithoutRules_s, isAgainstOneWay, reasonOfArc, turnRounds, type BlockReason, type RoadWeights } from './weigh-graph'

/** Far more than any drive: a way past one obstacle is always taken before a way past two. */
const OBSTACLE_S = 1e7

/**
 * Says what stands between places that no route joins: the fewest obstacles on any way
 * that keeps the one-way rules, in the order they are met; if there is no such way, on any
 * way at all.
 *
 * @returns `route-blocked`: `reason`, `name`, `lat`, `lon`, `limit_lb` or `limit_ft`, `vehicle_lb` or `vehicle_ft`, `roadId` of
 *   the first obstacle, `obstacleCount` and the `others` by reason and name; or `route-unconnected`
 */
export function whyNoRoute(graph: RoadGraph, weights: RoadWeights, stops: readonly RoadPlace[][]): Issue {
  for (const isOneWayRelaxed of [false, true]) {
    const relaxed = relaxedWeights(graph, weights, isOneWayRelaxed)
    const arrivals = arrivalsOverStops(graph, relaxed, stops)
    if (!arrivals) continue
    const obstacles = obstaclesOn(graph, weights, arrivals.flatMap(({ states }) => states.map((state) => arcOfState(graph, state))))
    const [first] = obstacles
    if (!first) break
    const others = obstacles.slice(1).map(({ reason, name }) => (name === '' ? reason : `${reason} ${name}`))
    return issue('route-blocked', 'block', [], { ...first, obstacleCount: obstacles.length, others: others.slice(0, 5).join('; ') })
  }
  const node = (places: readonly RoadPlace[] | undefined): number => graph.edgeFrom[places?.[0]?.edge ?? 0] ?? 0
  const sizeOf = (at: number): number => graph.componentSize[graph.component[at] ?? 0] ?? 0
  return issue('route-unconnected', 'block', [], {
    fromJunctionCount: sizeOf(node(stops[0])), toJunctionCount: sizeOf(node(stops[stops.length - 1])),
  })
}

function relaxedWeights(graph: RoadGraph, weights: RoadWeights, isOneWayRelaxed: boolean): RoadWeights {
  const drive_s = weights.drive_s.slice(), arc_s = weights.arc_s.slice()
  for (let arc = 0; arc < arc_s.length; arc++) {
    if (weights.reason[arc] !== 0 && (isOneWayRelaxed || !isAgainstOneWay(graph, weights, arc))) {
      drive_s[arc] = driveWithoutRules_s(graph, arc)
      arc_s[arc] = drive_s[arc]! + OBSTACLE_S
    }
    if (weights.isNodeShut[headOfArc(graph, arc)]) arc_s[arc]! += OBSTACLE_S
  }
  return { ...weights, drive_s, arc_s, isNodeShut: new Uint8Array(weights.isNodeShut.length), isTurnRound: turnRounds(graph, drive_s), isEased: true }
}

type Obstacle = Record<string, number | string> & { reason: string; name: string }

function obstaclesOn(graph: RoadGraph, weights: RoadWeights, arcs: readonly number[]): Obstacle[] {
  const obstacles: Obstacle[] = []
  const seen = new Set<string>()
  arcs.forEach((arc, i) => {
    const edge = arc >>> 1
    const reason = reasonOfArc(weights, arc)
    const key = `${reason} ${graph.edgeRoad[edge]}`
    if (reason !== 'open' && !seen.has(key)) {
      seen.add(key)
      obstacles.push(roadObstacle(graph, weights, edge, reason))
    }
    const node = headOfArc(graph, arc)
    if (i < arcs.length - 1 && weights.isNodeShut[node]) {
      obstacles.push({
        reason: 'barrier', name: nameOfEdge(graph, edge),
        lat: (graph.nodeLatE7[node] ?? 0) / DEGREES_E7, lon: (graph.nodeLonE7[node] ?? 0) / DEGREES_E7,
      })
    }
  })
  return obstacles
}

function roadObstacle(graph: RoadGraph, weights: RoadWeights, edge: number, reason: BlockReason): Obstacle {
  const noteId = weights.noted.get(edge)?.noteIds.at(-1)
  return {
    reason, name: nameOfEdge(graph, edge), ...middleOfEdge(graph, edge),
    roadId: graph.roadId[graph.edgeRoad[edge] ?? 0] ?? 0,
    ...limitValues(graph, weights, edge, reason),
    ...(noteId === undefined ? {} : { noteId }),
  }
}

function limitValues(graph: RoadGraph, weights: RoadWeights, edge: number, reason: BlockReason): Record<string, number> {
  const posted = postedOnEdge(graph, weights, edge)
  const { vehicle } = weights
  if (reason === 'weight') return { limit_lb: posted.weight_lb, vehicle_lb: vehicle.gross_lb }
  if (reason === 'height') return { limit_ft: posted.height_ft, vehicle_ft: vehicle.height_ft }
  return reason === 'width' ? { limit_ft: posted.width_ft, vehicle_ft: vehicle.width_ft } : {}
}
