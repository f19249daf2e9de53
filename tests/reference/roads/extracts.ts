import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { readOsm, type OsmExtract } from '@/lib/osm'
import { buildRoadGraph, type RoadGraph } from '@/lib/roads'
import { deriveRoadGraph } from '@/lib/roads/derive-road-graph'
import { unpackers } from '../../unit/osm/unpackers'

export const dataBytes = (name: string): Uint8Array => new Uint8Array(readFileSync(fileURLToPath(new URL(`../../data/${name}`, import.meta.url))))

const extracts = new Map<string, Promise<OsmExtract>>()

/** A real extract, read once. */
export function extractNamed(name: string): Promise<OsmExtract> {
  const known = extracts.get(name)
  if (known) return known
  const reading = readOsm(dataBytes(name), unpackers).then((found) => {
    if ('code' in found) throw new Error(JSON.stringify(found))
    return found
  })
  extracts.set(name, reading)
  return reading
}

export const graphNamed = async (name: string): Promise<RoadGraph> => buildRoadGraph(await extractNamed(name)).graph

/** The graph without turn restrictions and without waiting: what a general graph library can hold. */
export const plainGraph = (graph: RoadGraph): RoadGraph =>
  deriveRoadGraph({
    ...graph,
    arcDelay_s: new Float32Array(graph.arcDelay_s.length),
    turnFrom: new Uint32Array(0), turnArc: new Uint32Array(0), turnTo: new Int32Array(0), ghostArc: new Uint32Array(0),
  })

/** Evenly spread pairs of nodes of the main component that can be driven through. */
export function nodePairs(graph: RoadGraph, count: number): [number, number][] {
  const main = graph.componentSize.indexOf(graph.componentSize.reduce((most, size) => Math.max(most, size), 0))
  const nodes = [...graph.component.keys()].filter((node) => graph.component[node] === main && graph.nodeKind[node] === 0)
  // Steps by two numbers without common factors walk all over the list.
  return Array.from({ length: count }, (_, i): [number, number] => [nodes[(i * 7919) % nodes.length] ?? 0, nodes[(i * 104_729 + 31) % nodes.length] ?? 0])
}

export const pointOfNode = (graph: RoadGraph, node: number) => ({ lat: (graph.nodeLatE7[node] ?? 0) / 1e7, lon: (graph.nodeLonE7[node] ?? 0) / 1e7 })
