import { expose } from 'comlink'
import type { Point } from '@/lib/geo'
import { decodeDistrictMap, waterAway_ft } from '@/lib/osm'
import { findBlob } from '../_client/blobs'

/** What the worker that measures to the water on the map offers. */
export type WaterAwayService = {
  /** @returns undefined when the map cannot be read or has no water at the source */
  away_ft(mapHash: string, source: Point, place: Point): Promise<number | undefined>
}

const service: WaterAwayService = {
  async away_ft(mapHash, source, place) {
    const bytes = await findBlob(mapHash)
    const map = bytes && decodeDistrictMap(bytes)
    return map && !('code' in map) ? waterAway_ft(map, source, place) : undefined
  },
}

expose(service)
