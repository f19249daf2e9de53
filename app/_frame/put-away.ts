import type { DocumentEntry } from '../_client'

/**
 * What was put away and can be brought back, last first. What belongs to a district is told only while the district itself is
 * here: it comes back with it.
 *
 * @param entries the whole list, those put away among them
 * @param districtId of one district alone; else of all, the districts themselves among them
 */
export function putAwayOf(entries: readonly DocumentEntry[], districtId?: string): DocumentEntry[] {
  const here = new Set(entries.flatMap(({ id, kind, deletedAt }) => (kind === 'district' && deletedAt === undefined ? [id] : [])))
  return entries
    .filter(({ kind, deletedAt, districtId: own }) => deletedAt !== undefined && (kind === 'district' ? districtId === undefined : own !== undefined && here.has(own) && (districtId === undefined || own === districtId)))
    .sort((a, b) => (b.deletedAt ?? '').localeCompare(a.deletedAt ?? ''))
}
