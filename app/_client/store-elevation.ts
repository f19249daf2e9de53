import type { EditBody, TerrainSet } from '@/lib/plan'
import { putBlob } from './blobs'

/** What an elevation import gives to be stored; made by its worker. */
export type ImportedElevation = {
  terrainBlob: Uint8Array<ArrayBuffer>
  summary: { fileNames: readonly string[]; verticalDoubt_ft: number; doubtBasis: TerrainSet['doubtBasis']; step_ft: number }
}

const NAME_LENGTH = 120

/**
 * Keeps imported heights on the server.
 *
 * @param importedOn calendar day
 * @param before     the district's elevation until now: whose data it is stays named when the same files come again
 * @returns the edit that gives them to a district, in place of any it had; it is undone like any other
 * @throws Unreachable when no answer came; nothing of the district has changed then
 */
export async function storeElevation({ terrainBlob, summary }: ImportedElevation, importedOn: string, before?: TerrainSet): Promise<EditBody> {
  const hash = await putBlob('terrain', terrainBlob)
  const { fileNames, verticalDoubt_ft, doubtBasis, step_ft } = summary
  const name = fileNames.join(', ').slice(0, NAME_LENGTH) || 'elevation'
  const terrain: TerrainSet = { hash, name, importedOn, attribution: before?.name === name ? before.attribution : '', verticalDoubt_ft, doubtBasis, step_ft }
  return { kind: 'setFields', set: { terrain } }
}
