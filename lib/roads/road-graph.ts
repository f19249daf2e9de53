import type Flatbush from 'flatbush'
import type { Bounds } from '../geo'

/**
 * The district's roads as a graph in typed arrays.
 *
 * An **edge** is a piece of one mapped road between two junctions (or ends, barriers,
 * border cuts). Each edge is two **arcs**: arc 2e runs along the drawn direction, arc
 * 2e + 1 against it; the reverse of arc a is a ^ 1. A **state** is an arc, or a ghost of an
 * arc: the same road entered by a way on which a turn restriction of several roads is
 * under way. NaN is unknown throughout.
 */
export type RoadGraph = RoadTables & {
  /** Arcs that leave node n: `outArc[outStart[n]]` … `outArc[outStart[n + 1] − 1]`; arcs that enter it are their reverses. */
  readonly outStart: Uint32Array
  readonly outArc: Uint32Array
  /** First entry in the turn tables of each state, or −1. */
  readonly firstTurn: Int32Array
  /** Ghosts of each arc that has any. */
  readonly ghostsOfArc: ReadonlyMap<number, readonly number[]>
  /** Group of nodes that reach each other by the general rules of the road, any vehicle; sizes by group. */
  readonly component: Uint32Array
  readonly componentSize: Uint32Array
  readonly segments: SegmentIndex
}

/** What is stored; the rest is derived on load. */
export type RoadTables = {
  readonly nodeLatE7: Int32Array
  readonly nodeLonE7: Int32Array
  /** See `nodeKind`. */
  readonly nodeKind: Uint8Array

  readonly edgeFrom: Uint32Array
  readonly edgeTo: Uint32Array
  readonly edgeRoad: Uint32Array
  readonly edgeLength_ft: Float64Array
  /** Waiting at the end of each arc: signals, stops, gates. */
  readonly arcDelay_s: Float32Array
  /** Shape of edge e: points `shapeStart[e]` … `shapeStart[e + 1] − 1`, both ends included. */
  readonly shapeStart: Uint32Array
  readonly shapeLatE7: Int32Array
  readonly shapeLonE7: Int32Array

  /** Id of the mapped way. */
  readonly roadId: Float64Array
  /** Index in `roadClasses`. */
  readonly roadClass: Uint8Array
  /** Bits of `roadFlag`. */
  readonly roadFlags: Uint32Array
  readonly roadSpeedForward_mph: Float32Array
  readonly roadSpeedBackward_mph: Float32Array
  readonly roadMaxWeight_lb: Float32Array
  readonly roadMaxHeight_ft: Float32Array
  readonly roadMaxWidth_ft: Float32Array
  /** Indexes in `texts`. */
  readonly roadName: Uint32Array
  readonly roadRef: Uint32Array
  readonly texts: readonly string[]

  /** Turn tables, sorted by state then arc: from state `turnFrom` into arc `turnArc` one comes to state `turnTo`, −1 if banned. */
  readonly turnFrom: Uint32Array
  readonly turnArc: Uint32Array
  readonly turnTo: Int32Array
  /** Arc of each ghost; the state of ghost g is arcCount + g. */
  readonly ghostArc: Uint32Array

  readonly bounds: Bounds
  readonly dataDate: string
}

/** Road segments by place. */
export type SegmentIndex = {
  /** Boxes of all segments, x = longitude · cos(middle latitude), y = latitude, both in degrees; undefined when there are none. */
  readonly tree: Flatbush | undefined
  /** Index of each segment's first shape point, and its edge. */
  readonly shapePoint: Uint32Array
  readonly edge: Uint32Array
  readonly lonScaleFactor: number
}

/** Node an arc leads to. Arc 2 e drives edge e forward, 2 e + 1 back. */
export const headOfArc = (graph: RoadTables, arc: number): number => (arc & 1 ? graph.edgeFrom : graph.edgeTo)[arc >>> 1] ?? 0
/** Node an arc sets off from. */
export const tailOfArc = (graph: RoadTables, arc: number): number => (arc & 1 ? graph.edgeTo : graph.edgeFrom)[arc >>> 1] ?? 0
/** Arcs of a graph: two for each edge. */
export const arcCountOf = (graph: RoadTables): number => graph.edgeFrom.length * 2
/** States a search can be in: the arcs, then the ghosts that remember how an arc was entered. */
export const stateCountOf = (graph: RoadTables): number => graph.edgeFrom.length * 2 + graph.ghostArc.length
/** Arc that is driven in a state. */
export const arcOfState = (graph: RoadTables, state: number): number => {
  const arcCount = graph.edgeFrom.length * 2
  return state < arcCount ? state : (graph.ghostArc[state - arcCount] ?? 0)
}

/** Flags of the road an edge belongs to. */
export const flagsOfEdge = (graph: RoadTables, edge: number): number => graph.roadFlags[graph.edgeRoad[edge] ?? 0] ?? 0
