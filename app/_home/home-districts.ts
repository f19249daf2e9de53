import type { DocumentEntry } from '../_client'

/** A district and the plans that belong to it, newest first. */
export type HomeDistrict = Pick<DocumentEntry, 'id' | 'name' | 'updatedAt'> & { plans: readonly DocumentEntry[] }

/** The list of documents as the first page shows it. */
export const homeDistricts = (entries: readonly DocumentEntry[]): HomeDistrict[] =>
  entries.filter(({ kind }) => kind === 'district').map(({ id, name, updatedAt }) => ({
    id, name, updatedAt, plans: entries.filter((entry) => entry.kind === 'plan' && entry.districtId === id),
  }))
