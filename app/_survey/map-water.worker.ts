import { expose } from 'comlink'
import { decodeDistrictMap } from '@/lib/osm'
import { decodeRoadGraph } from '@/lib/roads'
import { findBlob } from '../_client/blobs'
import { mapWater, type MapWater } from './map-water'

/** What the worker that looks for water on the map offers. */
export type MapWaterService = {
  /** @returns undefined when the map cannot be read */
  find(mapHash: string, roadsHash: string | undefined): Promise<{ water: readonly MapWater[]; dataDate: string } | undefined>
}

const service: MapWaterService = {
  async find(mapHash, roadsHash) {
    const [bytes, roads] = await Promise.all([findBlob(mapHash), roadsHash === undefined ? undefined : findBlob(roadsHash).catch(() => undefined)])
    const map = bytes && decodeDistrictMap(bytes)
    if (!map || 'code' in map) return undefined
    const graph = roads && decodeRoadGraph(roads)
    return { water: mapWater(map, graph && !('code' in graph) ? graph : undefined), dataDate: map.dataDate }
  },
}

expose(service)
