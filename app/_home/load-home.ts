import { listDocuments } from '../_server/documents'
import type { DocumentEntry } from '../_server/documents'
import { getDatabase } from '../_server/open-database'

/** A district and the plans that belong to it, newest first. */
export type HomeDistrict = Pick<DocumentEntry, 'id' | 'name' | 'updatedAt'> & { plans: Pick<DocumentEntry, 'id' | 'name' | 'updatedAt'>[] }

/** What the first page lists. */
export async function loadHome(): Promise<HomeDistrict[]> {
  const entries = await listDocuments(await getDatabase())
  return entries.filter(({ kind }) => kind === 'district').map(({ id, name, updatedAt }) => ({
    id,
    name,
    updatedAt,
    plans: entries.filter((entry) => entry.kind === 'plan' && entry.districtId === id),
  }))
}
