import { issue, type Issue } from '../issue'
import { DEGREES_E7 } from '../osm'
import { FEET_PER_MILE } from '../units'
import { nodeKind } from './node-traits'
import { roadFlag, type RoadFlag } from './road-flags'
import { flagsOfEdge, headOfArc, type RoadGraph } from './road-graph'
import { limitsOf, middleOfEdge, nameOfEdge, postedOnEdge } from './route-limits'
import type { RoutePiece } from './route-pieces'
import type { RoadWeights } from './weigh-graph'

/** Beyond this the last bit is no driveway but open ground or water. */
const GAP_FT = 100
/** Within a twentieth of a weight posting, or half a foot of a height, a person should check. Common practice, no source. */
const CLOSE_WEIGHT_SHARE = 0.95
const CLOSE_HEIGHT_FT = 0.5
/** Shorter soft, narrow or unpaved bits in all are not worth a line. */
const SHORTEST_MI = 0.01

/** Cautions by length: what kind of road, as a whole, the route runs on. */
const stretches: readonly { readonly flag: RoadFlag; readonly code: string; readonly severity: 'warn' | 'note' }[] = [
  { flag: 'soft', code: 'route-soft', severity: 'warn' },
  { flag: 'narrow', code: 'route-narrow', severity: 'warn' },
  { flag: 'unpaved', code: 'route-unpaved', severity: 'note' },
  { flag: 'limitedAccess', code: 'route-limited-access', severity: 'note' },
  { flag: 'heavyBanned', code: 'route-heavy-banned', severity: 'warn' },
  { flag: 'seasonal', code: 'route-seasonal', severity: 'warn' },
  { flag: 'tunnel', code: 'route-tunnel', severity: 'note' },
]

/** What the driver of this vehicle must know of the route; the gravest first. */
export function cautionsOf(
  graph: RoadGraph, weights: RoadWeights, pieces: readonly RoutePiece[], { fromGap_ft, toGap_ft }: { fromGap_ft: number; toGap_ft: number },
): Issue[] {
  const cautions = [...bridgeCautions(graph, weights, pieces), ...closeCautions(graph, weights, pieces), ...stretchCautions(graph, pieces)]
  const gateCount = pieces.slice(0, -1).filter(({ arc }) => graph.nodeKind[headOfArc(graph, arc)] === nodeKind.gate).length
  if (gateCount > 0) cautions.push(issue('route-gates', 'warn', [], { gateCount, ...gatePlace(graph, pieces) }))
  if (weights.assumed.length > 0 && cautions.length + limitsOf(graph, weights, pieces).length > 0) {
    cautions.push(issue('route-vehicle-assumed', 'warn', [], { measures: weights.assumed.join(' '), ...weights.vehicle }))
  }
  if (fromGap_ft > GAP_FT) cautions.push(issue('route-start-off-road', 'warn', [], { gap_ft: fromGap_ft }))
  if (toGap_ft > GAP_FT) cautions.push(issue('route-end-off-road', 'warn', [], { gap_ft: toGap_ft }))
  return cautions.sort((a, b) => Number(a.severity !== 'warn') - Number(b.severity !== 'warn'))
}

function gatePlace(graph: RoadGraph, pieces: readonly RoutePiece[]): Record<string, number> {
  const piece = pieces.find(({ arc }) => graph.nodeKind[headOfArc(graph, arc)] === nodeKind.gate)
  const node = piece ? headOfArc(graph, piece.arc) : 0
  return { lat: (graph.nodeLatE7[node] ?? 0) / DEGREES_E7, lon: (graph.nodeLonE7[node] ?? 0) / DEGREES_E7 }
}

/** Bridges of unknown strength, each once: no posting in the data is not the same as no posting on the bridge. */
function bridgeCautions(graph: RoadGraph, weights: RoadWeights, pieces: readonly RoutePiece[]): Issue[] {
  const found: Issue[] = []
  const seen = new Set<number>()
  for (const { arc } of pieces) {
    const edge = arc >>> 1
    const road = graph.edgeRoad[edge] ?? 0
    const flags = flagsOfEdge(graph, edge)
    if (seen.has(road)) continue
    const place = { name: nameOfEdge(graph, edge), ...middleOfEdge(graph, edge), roadId: graph.roadId[road] ?? 0 }
    const posted = postedOnEdge(graph, weights, edge)
    if (flags & roadFlag.bridge && Number.isNaN(posted.weight_lb) && !(flags & roadFlag.weightPostedNone)) {
      seen.add(road)
      found.push(issue('route-bridge-unknown', 'warn', [], place))
    }
    if (flags & roadFlag.movableBridge) found.push(issue('route-bridge-movable', 'warn', [], place))
    if (flags & roadFlag.weightOtherwise) {
      seen.add(road)
      found.push(issue('route-weight-otherwise', 'warn', [], place))
    }
    if (flags & roadFlag.lengthPosted) {
      seen.add(road)
      found.push(issue('route-length-posted', 'warn', [], place))
    }
  }
  return found
}

function closeCautions(graph: RoadGraph, weights: RoadWeights, pieces: readonly RoutePiece[]): Issue[] {
  return limitsOf(graph, weights, pieces).flatMap(({ kind, limit, vehicle, name, point }) => {
    if (kind === 'weight' && vehicle > limit * CLOSE_WEIGHT_SHARE) {
      return [issue('route-weight-close', 'warn', [], { limit_lb: limit, gross_lb: vehicle, name, ...point })]
    }
    if (kind === 'height' && vehicle > limit - CLOSE_HEIGHT_FT) {
      return [issue('route-height-close', 'warn', [], { limit_ft: limit, height_ft: vehicle, name, ...point })]
    }
    return []
  })
}

function stretchCautions(graph: RoadGraph, pieces: readonly RoutePiece[]): Issue[] {
  return stretches.flatMap(({ flag, code, severity }) => {
    let length_mi = 0
    let first: RoutePiece | undefined
    for (const piece of pieces) {
      if (!(flagsOfEdge(graph, piece.arc >>> 1) & roadFlag[flag])) continue
      first ??= piece
      length_mi += ((piece.toShare - piece.fromShare) * (graph.edgeLength_ft[piece.arc >>> 1] ?? 0)) / FEET_PER_MILE
    }
    if (!first || length_mi < SHORTEST_MI) return []
    const edge = first.arc >>> 1
    return [issue(code, severity, [], { length_mi, name: nameOfEdge(graph, edge), ...middleOfEdge(graph, edge) })]
  })
}
