import { proxy, wrap } from 'comlink'
import type { Bounds } from '@/lib/geo'
import { issue, type Issue } from '@/lib/issue'
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
  const worker = new Worker(new URL('./elevation.worker.ts', import.meta.url))
  try {
    const service = wrap<ElevationService>(worker)
    return await Promise.race([
      service.run(files.map((file) => ({ name: file.name, blob: file })), bounds, proxy((doneShare: number) => onProgress?.(doneShare))),
      new Promise<Issue>((resolve) => signal?.addEventListener('abort', () => { resolve(aborted) }, { once: true })),
      new Promise<Issue>((resolve) => worker.addEventListener('error', ({ message }) => { resolve(issue('worker-failed', 'block', [], { reason: message })) }, { once: true })),
    ])
  } finally {
    worker.terminate()
  }
}
