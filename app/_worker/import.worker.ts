import { expose, transfer } from 'comlink'
import type { Issue } from '@/lib/issue'
import { gunzip, inflate } from './decompress'
import { importDistrictData, type DistrictImport } from './import-roads'

/** What the import's worker offers. */
export type ImportService = {
  run(bytes: Uint8Array<ArrayBuffer>, fileName: string, onProgress: (doneShare: number) => void): Promise<DistrictImport | Issue>
}

const service: ImportService = {
  async run(bytes, fileName, onProgress) {
    const made = await importDistrictData(bytes, fileName, { inflate, gunzip, onProgress })
    return 'code' in made ? made : transfer(made, [made.graphBlob.buffer, made.mapBlob.buffer])
  },
}

expose(service)
