import { expose } from 'comlink'
import type { Point } from '@/lib/geo'
import { decodeRoadGraph, type RoadGraph } from '@/lib/roads'
import { findBlob } from '../_client/blobs'
import { findNearRoad, type NearRoad } from './near-road'

/** What the worker that knows the roads offers the survey. */
export type NearRoadService = { find(roadsHash: string, point: Point): Promise<NearRoad | undefined> }

let kept: { hash: string; graph: Promise<RoadGraph | undefined> } | undefined

async function load(hash: string): Promise<RoadGraph | undefined> {
  const bytes = await findBlob(hash)
  const graph = bytes && decodeRoadGraph(bytes)
  return graph && !('code' in graph) ? graph : undefined
}

const service: NearRoadService = {
  async find(roadsHash, point) {
    if (kept?.hash !== roadsHash) kept = { hash: roadsHash, graph: load(roadsHash) }
    const graph = await kept.graph
    return graph && findNearRoad(graph, point)
  },
}

expose(service)
