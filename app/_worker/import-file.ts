import { transfer } from 'comlink'
import { issue, type Issue } from '@/lib/issue'
import type { ImportService } from './import.worker'
import type { DistrictImport } from './import-roads'
import { inOneOffWorker } from './one-off-worker'
import { withProgress } from './with-progress'

export type ImportFileOptions = { onProgress?: (doneShare: number) => void; signal?: AbortSignal }

/**
 * Reads a file of map data in a worker of its own; the page stays at hand, and giving up ends the worker.
 *
 * @returns the road graph and the drawn map with what they hold, or the one issue that stopped it
 */
export async function importFile(file: File, { onProgress, signal }: ImportFileOptions = {}): Promise<DistrictImport | Issue> {
  const aborted = issue('osm-aborted', 'block')
  if (signal?.aborted) return aborted
  const bytes = new Uint8Array(await file.arrayBuffer())
  return inOneOffWorker<ImportService, DistrictImport | Issue>(
    () => new Worker(new URL('./import.worker.ts', import.meta.url)), aborted, signal,
    (service) => withProgress(onProgress, async (tell) => service.run(transfer(bytes, [bytes.buffer]), file.name, tell)),
  )
}
