import { createHash } from 'node:crypto'
import { readFile } from 'node:fs/promises'
import { basename } from 'node:path'
import { issue, type Issue } from '@/lib/issue'
import { OSM_ATTRIBUTION } from '@/lib/osm/attribution'
import type { DataSet, LegAsk, RoadNote } from '@/lib/plan'
import { decodeRoadGraph } from '@/lib/roads'
import { legFinder, type FoundLeg } from '@/lib/supply'
import { importWithNode } from '../_worker/node/import-with-node'

export type FileRoads = { dataSet: DataSet; find: (notes: readonly RoadNote[]) => (ask: LegAsk) => FoundLeg | Issue }

/**
 * Roads of a map file, as the app's import makes them.
 *
 * @throws the Issue that the import reports
 */
export async function roadsFromFile(file: string): Promise<FileRoads> {
  const name = basename(file)
  const bytes = await readFile(file).catch((error: NodeJS.ErrnoException) => {
    throw issue('file-missing', 'block', [], { file: name, reason: error.code ?? '' })
  })
  const imported = await importWithNode(new Uint8Array(bytes), name)
  const graph = decodeRoadGraph(imported.graphBlob)
  if ('code' in graph) throw graph
  return {
    dataSet: {
      hash: createHash('sha256').update(imported.graphBlob).digest('hex'),
      name,
      attribution: OSM_ATTRIBUTION,
      importedOn: new Date().toISOString().slice(0, 10),
    },
    find: (notes) => legFinder(graph, notes),
  }
}
