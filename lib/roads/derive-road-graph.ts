import Flatbush from 'flatbush'
import { DEGREES_E7 } from '../osm'
import { componentsOf } from './components'
import { arcCountOf, stateCountOf, tailOfArc, type RoadGraph, type RoadTables, type SegmentIndex } from './road-graph'

/** Adds to the stored tables what follows from them: arcs by node, turns by state, components, the index of segments. */
export function deriveRoadGraph(tables: RoadTables): RoadGraph {
  const { outStart, outArc } = outArcsOf(tables)
  const firstTurn = new Int32Array(stateCountOf(tables)).fill(-1)
  for (let i = tables.turnFrom.length - 1; i >= 0; i--) firstTurn[tables.turnFrom[i] ?? 0] = i
  const ghostsOfArc = new Map<number, number[]>()
  const arcCount = arcCountOf(tables)
  tables.ghostArc.forEach((arc, ghost) => ghostsOfArc.set(arc, [...(ghostsOfArc.get(arc) ?? []), arcCount + ghost]))
  const { component, componentSize } = componentsOf(tables, outStart, outArc)
  return { ...tables, outStart, outArc, firstTurn, ghostsOfArc, component, componentSize, segments: segmentsOf(tables) }
}

function outArcsOf(tables: RoadTables): { outStart: Uint32Array; outArc: Uint32Array } {
  const arcCount = arcCountOf(tables)
  const outStart = new Uint32Array(tables.nodeLatE7.length + 1)
  for (let arc = 0; arc < arcCount; arc++) outStart[tailOfArc(tables, arc) + 1]! += 1
  for (let node = 0; node < tables.nodeLatE7.length; node++) outStart[node + 1]! += outStart[node] ?? 0
  const next = outStart.slice()
  const outArc = new Uint32Array(arcCount)
  for (let arc = 0; arc < arcCount; arc++) outArc[next[tailOfArc(tables, arc)]!++] = arc
  return { outStart, outArc }
}

function segmentsOf(tables: RoadTables): SegmentIndex {
  const { shapeStart, shapeLatE7, shapeLonE7 } = tables
  const edgeCount = tables.edgeFrom.length
  const segmentCount = shapeLatE7.length - edgeCount
  const lonScaleFactor = Math.cos((((tables.bounds.south + tables.bounds.north) / 2) * Math.PI) / 180)
  const shapePoint = new Uint32Array(segmentCount)
  const edgeOf = new Uint32Array(segmentCount)
  if (segmentCount === 0) return { tree: undefined, shapePoint, edge: edgeOf, lonScaleFactor }
  const tree = new Flatbush(segmentCount)
  let segment = 0
  for (let edge = 0; edge < edgeCount; edge++) {
    for (let i = shapeStart[edge] ?? 0; i < (shapeStart[edge + 1] ?? 0) - 1; i++) {
      const xA = ((shapeLonE7[i] ?? 0) / DEGREES_E7) * lonScaleFactor, yA = (shapeLatE7[i] ?? 0) / DEGREES_E7
      const xB = ((shapeLonE7[i + 1] ?? 0) / DEGREES_E7) * lonScaleFactor, yB = (shapeLatE7[i + 1] ?? 0) / DEGREES_E7
      tree.add(Math.min(xA, xB), Math.min(yA, yB), Math.max(xA, xB), Math.max(yA, yB))
      shapePoint[segment] = i
      edgeOf[segment++] = edge
    }
  }
  tree.finish()
  return { tree, shapePoint, edge: edgeOf, lonScaleFactor }
}
