import type { Bounds } from '@/lib/geo'
import { issue, type Issue } from '@/lib/issue'
import { inOneOffWorker } from '../one-off-worker'
import { withProgress } from '../with-progress'
import type { ElevationService } from './elevation.worker'
import type { ElevationImport } from './import-elevation'

export type ElevationFilesOptions = { bounds: Bounds; onProgress?: (doneShare: number) => void; signal?: AbortSignal }

/**
 * Reads elevation files in a worker of its own, which asks for the pieces it needs: the page stays at hand, and giving
 * up ends the worker.
 *
 * @returns the district's heights with what they hold, or the one issue that stopped it
 */
export async function importElevationFiles(files: readonly File[], { bounds, onProgress, signal }: ElevationFilesOptions): Promise<ElevationImport | Issue> {
  const aborted = issue('elevation-aborted', 'block')
  if (signal?.aborted) return aborted
  return inOneOffWorker<ElevationService, ElevationImport | Issue>(
    () => new Worker(new URL('./elevation.worker.ts', import.meta.url)), aborted, signal,
    (service) => withProgress(onProgress, async (tell) => service.run(files.map((file) => ({ name: file.name, blob: file })), bounds, tell)),
  )
}
