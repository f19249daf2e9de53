import { gunzipSync } from 'node:zlib'
import type { Bounds } from '@/lib/geo'
import { importElevation, type ElevationImport } from '@/app/_worker/elevation/import-elevation'

/**
 * The app's import of an elevation file, run outside the browser.
 *
 * @param bounds of the district
 * @throws the Issue that the import reports
 */
export async function importElevationWithNode(bytes: Uint8Array<ArrayBuffer>, fileName: string, bounds: Bounds): Promise<ElevationImport> {
  const imported = await importElevation([{ name: fileName, blob: new Blob([bytes]) }], {
    bounds, gunzip: (part, maxOutputLength) => Promise.resolve(gunzipSync(part, { maxOutputLength })),
  })
  if ('code' in imported) throw imported
  return imported
}
