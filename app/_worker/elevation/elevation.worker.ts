import { expose, transfer } from 'comlink'
import type { Bounds } from '@/lib/geo'
import type { Issue } from '@/lib/issue'
import { gunzip } from '../decompress'
import type { ElevationFile } from './elevation-file'
import { importElevation, type ElevationImport } from './import-elevation'

/** What the elevation import's worker offers. */
export type ElevationService = {
  run(files: readonly ElevationFile[], bounds: Bounds, onProgress: (doneShare: number) => void): Promise<ElevationImport | Issue>
}

const service: ElevationService = {
  async run(files, bounds, onProgress) {
    const made = await importElevation(files, { bounds, gunzip, onProgress })
    return 'code' in made ? made : transfer(made, [made.terrainBlob.buffer])
  },
}

expose(service)
