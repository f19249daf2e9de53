import { proxy, transfer, wrap } from 'comlink'
import { issue, type Issue } from '@/lib/issue'
import type { ImportService } from './import.worker'
import type { DistrictImport } from './import-roads'

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
  const worker = new Worker(new URL('./import.worker.ts', import.meta.url))
  try {
    const service = wrap<ImportService>(worker)
    return await Promise.race([
      service.run(transfer(bytes, [bytes.buffer]), file.name, proxy((doneShare: number) => onProgress?.(doneShare))),
      new Promise<Issue>((resolve) => signal?.addEventListener('abort', () => resolve(aborted), { once: true })),
      new Promise<Issue>((resolve) => worker.addEventListener('error', ({ message }) => resolve(issue('worker-failed', 'block', [], { reason: message })), { once: true })),
    ])
  } finally {
    worker.terminate()
  }
}
