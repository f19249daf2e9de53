import { gunzipSync, inflateSync } from 'node:zlib'
import { importDistrictData, type DistrictImport } from '@/app/_worker/import-roads'

/**
 * The app's import of a map file, run outside the browser.
 *
 * @throws the Issue that the import reports
 */
export async function importWithNode(bytes: Uint8Array, fileName: string): Promise<DistrictImport> {
  const imported = await importDistrictData(bytes, fileName, {
    inflate: (part, maxOutputLength) => inflateSync(part, { maxOutputLength }),
    gunzip: (part, maxOutputLength) => gunzipSync(part, { maxOutputLength }),
  })
  if ('code' in imported) throw imported
  return imported
}
