import type { Bounds } from '@/lib/geo'
import { OSM_ATTRIBUTION } from '@/lib/osm/attribution'
import type { DataSet, EditBody } from '@/lib/plan'
import { putBlob } from './blobs'

/** What an import gives to be stored; made by the import's worker. */
export type ImportedRoads = {
  graphBlob: Uint8Array<ArrayBuffer>
  mapBlob: Uint8Array<ArrayBuffer>
  summary: { fileName: string; bounds: Bounds; dataDate?: string }
}

/**
 * Keeps an imported road graph and map on the server.
 *
 * @param importedOn calendar day
 * @returns the edit that gives them to a district; it is undone like any other
 * @throws Unreachable when no answer came; nothing of the district has changed then
 */
export async function storeImport({ graphBlob, mapBlob, summary }: ImportedRoads, importedOn: string): Promise<EditBody> {
  const [roads, map] = [await putBlob('roads', graphBlob), await putBlob('map', mapBlob)]
  const { fileName, bounds, dataDate } = summary
  const dataSet = (hash: string): DataSet => ({
    hash, importedOn, attribution: OSM_ATTRIBUTION, name: fileName.slice(0, 120) || 'map', ...(dataDate && { dataDate: dataDate.slice(0, 40) }),
  })
  return { kind: 'setFields', set: { roads: dataSet(roads), map: dataSet(map), bounds } }
}
