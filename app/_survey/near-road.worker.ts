import { expose } from 'comlink'
import type { Point } from '@/lib/geo'
import { decodeRoadGraph, travelMatrix, weighGraph, type RoadGraph, type RoadNoteLike } from '@/lib/roads'
import { findBlob } from '../_client/blobs'
import { findNearRoad, type NearRoad } from './near-road'

/** What the worker that knows the roads offers the survey. */
export type NearRoadService = {
  find(roadsHash: string, point: Point): Promise<NearRoad | undefined>
  /** Driving times from a place to others for a vehicle of the largest ordinary size, road notes counted; undefined where no way leads. */
  drives(roadsHash: string, notes: readonly RoadNoteLike[], from: Point, to: readonly Point[]): Promise<(number | undefined)[]>
}

let kept: { hash: string; graph: Promise<RoadGraph | undefined> } | undefined

function graphOf(hash: string): Promise<RoadGraph | undefined> {
  if (kept?.hash !== hash) kept = { hash, graph: load(hash) }
  return kept.graph
}

async function load(hash: string): Promise<RoadGraph | undefined> {
  const bytes = await findBlob(hash)
  const graph = bytes && decodeRoadGraph(bytes)
  return graph && !('code' in graph) ? graph : undefined
}

const service: NearRoadService = {
  async find(roadsHash, point) {
    const graph = await graphOf(roadsHash)
    return graph && findNearRoad(graph, point)
  },
  async drives(roadsHash, notes, from, to) {
    const graph = await graphOf(roadsHash)
    const [row = []] = graph ? travelMatrix(graph, weighGraph(graph, {}, notes), [from], to) : []
    return to.map((_, index) => row[index])
  },
}

expose(service)
