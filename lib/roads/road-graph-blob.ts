import { issue, type Issue } from '../issue'
import { DEGREES_E7 } from '../osm'
import { bytesFromTexts, findTextsIn, packBlob, unpackBlob, type Sections } from '../osm/pack-blob'
import { deriveRoadGraph } from './derive-road-graph'
import { nodeKind } from './node-traits'
import { roadClasses } from './road-class'
import type { RoadGraph, RoadTables } from './road-graph'

const MAGIC = 'MRRG'
/** Raised whenever a table, a flag, a class or a speed rule changes: a graph is made again from its file, never guessed at. */
const ROAD_GRAPH_VERSION = 1

const layout = {
  bounds: 'f64', dataDate: 'u8', texts: 'u8',
  nodeLatE7: 'i32', nodeLonE7: 'i32', nodeKind: 'u8',
  edgeFrom: 'u32', edgeTo: 'u32', edgeRoad: 'u32', edgeLength_ft: 'f64', arcDelay_s: 'f32',
  shapeStart: 'u32', shapeLatE7: 'i32', shapeLonE7: 'i32',
  roadId: 'f64', roadClass: 'u8', roadFlags: 'u32', roadSpeedForward_mph: 'f32', roadSpeedBackward_mph: 'f32',
  roadMaxWeight_lb: 'f32', roadMaxHeight_ft: 'f32', roadMaxWidth_ft: 'f32', roadName: 'u32', roadRef: 'u32',
  turnFrom: 'u32', turnArc: 'u32', turnTo: 'i32', ghostArc: 'u32',
} as const
type Stored = Sections<typeof layout>

/** A graph as one binary blob, the same bytes for the same graph. */
export function encodeRoadGraph(graph: RoadTables): Uint8Array<ArrayBuffer> {
  const { south, west, north, east } = graph.bounds
  const stored: Record<string, unknown> = {
    ...graph,
    bounds: Float64Array.of(south, west, north, east),
    dataDate: bytesFromTexts([graph.dataDate]),
    texts: bytesFromTexts(graph.texts),
  }
  return packBlob(MAGIC, ROAD_GRAPH_VERSION, layout, stored as Stored)
}

/**
 * Reads a graph blob. Every index, order and range is checked, so a graph that comes out
 * of it never leads a search astray.
 *
 * @returns the graph, or `road-graph-unreadable` with the reason: not-ours, newer-version, older-version, damaged
 */
export function decodeRoadGraph(blob: Uint8Array): RoadGraph | Issue {
  const stored = unpackBlob(MAGIC, ROAD_GRAPH_VERSION, layout, blob)
  if (typeof stored === 'string') return refusal(stored)
  const texts = findTextsIn(stored.texts), [dataDate] = findTextsIn(stored.dataDate) ?? []
  const [south, west, north, east] = stored.bounds
  if (!texts || dataDate === undefined || south === undefined || west === undefined || north === undefined || east === undefined) return refusal('damaged')
  const tables: RoadTables = { ...stored, texts, dataDate, bounds: { south, west, north, east } }
  return isConsistent(tables) ? deriveRoadGraph(tables) : refusal('damaged')
}

const refusal = (reason: string): Issue => issue('road-graph-unreadable', 'block', [], { reason })

const isBelow = (numbers: Uint32Array | Uint8Array, limit: number): boolean => numbers.every((value) => value < limit)
const isNanOrAbove0 = (numbers: Float32Array): boolean => numbers.every((value) => Number.isNaN(value) || value > 0)
const isWithin = (numbers: Int32Array, limit: number): boolean => numbers.every((value) => value >= -limit && value <= limit)

function isConsistent(t: RoadTables): boolean {
  const nodeCount = t.nodeLatE7.length, edgeCount = t.edgeFrom.length, roadCount = t.roadId.length, shapeCount = t.shapeLatE7.length
  const arcCount = 2 * edgeCount, stateCount = arcCount + t.ghostArc.length
  const { south, west, north, east } = t.bounds
  return (
    south >= -90 && north <= 90 && south <= north && west >= -180 && east <= 180 && west <= east &&
    [t.nodeLonE7, t.nodeKind].every(({ length }) => length === nodeCount) &&
    [t.edgeTo, t.edgeRoad, t.edgeLength_ft].every(({ length }) => length === edgeCount) &&
    t.arcDelay_s.length === arcCount && t.shapeStart.length === edgeCount + 1 && t.shapeLonE7.length === shapeCount &&
    [
      t.roadClass, t.roadFlags, t.roadSpeedForward_mph, t.roadSpeedBackward_mph, t.roadMaxWeight_lb, t.roadMaxHeight_ft, t.roadMaxWidth_ft,
      t.roadName, t.roadRef,
    ].every(({ length }) => length === roadCount) &&
    t.turnArc.length === t.turnFrom.length && t.turnTo.length === t.turnFrom.length &&
    [t.nodeLatE7, t.shapeLatE7].every((lats) => isWithin(lats, 90 * DEGREES_E7)) &&
    [t.nodeLonE7, t.shapeLonE7].every((lons) => isWithin(lons, 180 * DEGREES_E7)) &&
    isBelow(t.nodeKind, Object.keys(nodeKind).length) &&
    isBelow(t.edgeFrom, nodeCount) && isBelow(t.edgeTo, nodeCount) && isBelow(t.edgeRoad, roadCount) &&
    t.edgeLength_ft.every((length) => length >= 0 && length < 1e8) && t.arcDelay_s.every((delay) => delay >= 0 && delay < 1e5) &&
    isShapeInOrder(t, edgeCount, shapeCount) &&
    isBelow(t.roadClass, roadClasses.length) && isBelow(t.roadName, t.texts.length) && isBelow(t.roadRef, t.texts.length) &&
    [t.roadSpeedForward_mph, t.roadSpeedBackward_mph].every((speeds) => speeds.every((speed) => speed > 0 && speed < 200)) &&
    [t.roadMaxWeight_lb, t.roadMaxHeight_ft, t.roadMaxWidth_ft].every(isNanOrAbove0) &&
    isBelow(t.ghostArc, arcCount) && isTurnsInOrder(t, arcCount, stateCount)
  )
}

function isShapeInOrder(t: RoadTables, edgeCount: number, shapeCount: number): boolean {
  if ((t.shapeStart[0] ?? 0) !== 0 || t.shapeStart[edgeCount] !== shapeCount) return false
  for (let edge = 0; edge < edgeCount; edge++) {
    const start = t.shapeStart[edge]!, end = t.shapeStart[edge + 1]!
    if (end < start + 2 || end > shapeCount) return false
    const from = t.edgeFrom[edge]!, to = t.edgeTo[edge]!
    if (t.shapeLatE7[start] !== t.nodeLatE7[from] || t.shapeLonE7[start] !== t.nodeLonE7[from]) return false
    if (t.shapeLatE7[end - 1] !== t.nodeLatE7[to] || t.shapeLonE7[end - 1] !== t.nodeLonE7[to]) return false
  }
  return true
}

function isTurnsInOrder(t: RoadTables, arcCount: number, stateCount: number): boolean {
  const arcOf = (state: number): number => (state < arcCount ? state : t.ghostArc[state - arcCount]!)
  for (let i = 0; i < t.turnFrom.length; i++) {
    const from = t.turnFrom[i]!, arc = t.turnArc[i]!, to = t.turnTo[i]!
    if (from >= stateCount || arc >= arcCount || to < -1 || to >= stateCount) return false
    if (i > 0 && (from < t.turnFrom[i - 1]! || (from === t.turnFrom[i - 1] && arc <= t.turnArc[i - 1]!))) return false
    // A turn leads into the arc it names, from where its state ends.
    if (to >= 0 && arcOf(to) !== arc) return false
    const before = arcOf(from)
    const head = (before & 1 ? t.edgeFrom : t.edgeTo)[before >>> 1]
    if (head !== (arc & 1 ? t.edgeTo : t.edgeFrom)[arc >>> 1]) return false
  }
  return true
}
