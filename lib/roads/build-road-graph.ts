import { distanceM } from '../geo'
import { issue, type Issue } from '../issue'
import { DEGREES_E7, MISSING_NODE, type OsmExtract } from '../osm'
import { growingFloat64, growingInt32, growingUint32 } from '../osm/growing-array'
import { TextPool } from '../osm/pack-blob'
import { feetFromMetres } from '../units'
import { deriveRoadGraph } from './derive-road-graph'
import { nodeKind, nodeTraitsOf, type NodeTraits } from './node-traits'
import { findRoadClass, roadClasses, type RoadClass } from './road-class'
import type { RoadGraph, RoadTables } from './road-graph'
import { roadTraitsOf } from './road-traits'
import { turnTablesOf } from './turn-tables'

export type BuiltRoads = { readonly graph: RoadGraph; readonly issues: readonly Issue[] }

type RoadWay = { readonly way: number; readonly roadClass: RoadClass }

/**
 * Makes the routable graph of an extract. Roads are cut at junctions, at their ends, where
 * something makes a vehicle wait or stops it, and where the file lacks a node; the order
 * of the file changes nothing.
 *
 * @returns the graph, and notes on what could not be used: `roads-restrictions-unused`
 *   (by reason). A file whose roads are all unusable gives a graph without edges.
 */
export function buildRoadGraph(extract: OsmExtract): BuiltRoads {
  const roads = roadWaysOf(extract)
  const traitsOfNode = nodeTraitsByIndex(extract)
  const isJunction = junctionsOf(extract, roads, traitsOfNode)

  const graphNode = new Int32Array(extract.nodeId.length).fill(-1)
  const nodeOf: number[] = []
  const edgeFrom = growingUint32(), edgeTo = growingUint32(), edgeRoad = growingUint32(), edgeLength_ft = growingFloat64()
  const arcDelay_s = growingFloat64()
  const shapeStart = growingUint32(), shapeLatE7 = growingInt32(), shapeLonE7 = growingInt32()
  const roadFirstEdge = new Uint32Array(roads.length + 1)

  const graphNodeOf = (index: number): number => {
    const known = graphNode[index] ?? -1
    if (known >= 0) return known
    graphNode[index] = nodeOf.length
    return nodeOf.push(index) - 1
  }
  const pointOf = (index: number) => ({ lat: (extract.nodeLatE7[index] ?? 0) / DEGREES_E7, lon: (extract.nodeLonE7[index] ?? 0) / DEGREES_E7 })

  const addEdge = (road: number, run: readonly number[]): void => {
    const first = run[0], last = run[run.length - 1]
    if (first === undefined || last === undefined || run.length < 2) return
    let length_m = 0
    shapeStart.push(shapeLatE7.length)
    run.forEach((index, i) => {
      shapeLatE7.push(extract.nodeLatE7[index] ?? 0)
      shapeLonE7.push(extract.nodeLonE7[index] ?? 0)
      if (i > 0) length_m += distanceM(pointOf(run[i - 1] ?? 0), pointOf(index))
    })
    edgeFrom.push(graphNodeOf(first))
    edgeTo.push(graphNodeOf(last))
    edgeRoad.push(road)
    edgeLength_ft.push(feetFromMetres(length_m))
    arcDelay_s.push(traitsOfNode.get(last)?.forwardDelay_s ?? 0)
    arcDelay_s.push(traitsOfNode.get(first)?.backwardDelay_s ?? 0)
  }

  roads.forEach(({ way }, road) => {
    roadFirstEdge[road] = edgeFrom.length
    let run: number[] = []
    for (let i = extract.wayStart[way] ?? 0; i < (extract.wayStart[way + 1] ?? 0); i++) {
      const index = extract.wayNode[i] ?? MISSING_NODE
      if (index === MISSING_NODE) {
        addEdge(road, run)
        run = []
        continue
      }
      if (index === run[run.length - 1]) continue
      run.push(index)
      if (run.length > 1 && isJunction[index]) {
        addEdge(road, run)
        run = [index]
      }
    }
    addEdge(road, run)
  })
  roadFirstEdge[roads.length] = edgeFrom.length
  shapeStart.push(shapeLatE7.length)

  const tables: Omit<RoadTables, 'turnFrom' | 'turnArc' | 'turnTo' | 'ghostArc'> = {
    nodeLatE7: Int32Array.from(nodeOf, (index) => extract.nodeLatE7[index] ?? 0),
    nodeLonE7: Int32Array.from(nodeOf, (index) => extract.nodeLonE7[index] ?? 0),
    nodeKind: Uint8Array.from(nodeOf, (index) => traitsOfNode.get(index)?.kind ?? nodeKind.open),
    edgeFrom: edgeFrom.toArray(), edgeTo: edgeTo.toArray(), edgeRoad: edgeRoad.toArray(), edgeLength_ft: edgeLength_ft.toArray(),
    arcDelay_s: Float32Array.from(arcDelay_s.toArray()),
    shapeStart: shapeStart.toArray(), shapeLatE7: shapeLatE7.toArray(), shapeLonE7: shapeLonE7.toArray(),
    ...roadTablesOf(extract, roads),
    bounds: extract.bounds,
    dataDate: extract.dataDate ?? '',
  }
  const nodeOfId = (index: number): number => graphNode[index] ?? -1
  const { turns, issues } = turnTablesOf(extract, tables, roads.map(({ way }) => way), roadFirstEdge, nodeOfId)
  return { graph: deriveRoadGraph({ ...tables, ...turns }), issues }
}

function roadWaysOf(extract: OsmExtract): RoadWay[] {
  const roads: RoadWay[] = []
  extract.wayTags.forEach((tags, way) => {
    const roadClass = findRoadClass(tags)
    if (roadClass) roads.push({ way, roadClass })
  })
  return roads
}

function nodeTraitsByIndex(extract: OsmExtract): Map<number, NodeTraits> {
  const traits = new Map<number, NodeTraits>()
  extract.taggedNode.forEach((index, i) => {
    const found = nodeTraitsOf(extract.nodeTags[i] ?? {})
    if (found.kind !== nodeKind.open || found.forwardDelay_s > 0 || found.backwardDelay_s > 0) traits.set(index, found)
  })
  return traits
}

/** 1 for nodes where roads are cut: met twice, or an end, or with a barrier, a signal or a stop. */
function junctionsOf(extract: OsmExtract, roads: readonly RoadWay[], traits: ReadonlyMap<number, NodeTraits>): Uint8Array {
  const metOnce = new Uint8Array(extract.nodeId.length)
  const isJunction = new Uint8Array(extract.nodeId.length)
  for (const { way } of roads) {
    const start = extract.wayStart[way] ?? 0, end = extract.wayStart[way + 1] ?? 0
    let before = MISSING_NODE
    for (let i = start; i < end; i++) {
      const index = extract.wayNode[i] ?? MISSING_NODE
      if (index !== MISSING_NODE && index !== before) {
        if (metOnce[index] || i === start || i === end - 1) isJunction[index] = 1
        metOnce[index] = 1
      }
      before = index
    }
  }
  for (const index of traits.keys()) if (metOnce[index]) isJunction[index] = 1
  return isJunction
}

function roadTablesOf(extract: OsmExtract, roads: readonly RoadWay[]) {
  const pool = new TextPool()
  const count = roads.length
  const tables = {
    roadId: new Float64Array(count), roadClass: new Uint8Array(count), roadFlags: new Uint32Array(count),
    roadSpeedForward_mph: new Float32Array(count), roadSpeedBackward_mph: new Float32Array(count),
    roadMaxWeight_lb: new Float32Array(count), roadMaxHeight_ft: new Float32Array(count), roadMaxWidth_ft: new Float32Array(count),
    roadName: new Uint32Array(count), roadRef: new Uint32Array(count),
    texts: pool.texts,
  }
  roads.forEach(({ way, roadClass }, road) => {
    const tags = extract.wayTags[way] ?? {}
    const traits = roadTraitsOf(tags, roadClass)
    tables.roadId[road] = extract.wayId[way] ?? 0
    tables.roadClass[road] = roadClasses.indexOf(roadClass)
    tables.roadFlags[road] = traits.flags
    tables.roadSpeedForward_mph[road] = traits.speedForward_mph
    tables.roadSpeedBackward_mph[road] = traits.speedBackward_mph
    tables.roadMaxWeight_lb[road] = traits.maxWeight_lb
    tables.roadMaxHeight_ft[road] = traits.maxHeight_ft
    tables.roadMaxWidth_ft[road] = traits.maxWidth_ft
    tables.roadName[road] = pool.indexFor(tags['name'])
    tables.roadRef[road] = pool.indexFor(tags['ref'])
  })
  return tables
}

/** The blocking issue of a graph that nothing can drive on, for those who import. */
export const noRoadsIssue = (graph: RoadGraph): Issue | undefined =>
  graph.edgeFrom.length === 0 ? issue('roads-none-usable', 'block', [], { roadCount: graph.roadId.length }) : undefined
