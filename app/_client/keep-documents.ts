import type { Shelf } from './shelf'
import type { Transport } from './transport'

/**
 * Has the newest state of a district and of each of its plans on the shelf; what is there already is not asked for again.
 *
 * @param transport puts on the shelf whatever it loads
 * @returns ids of the documents that are there now
 * @throws Unreachable when the server is
 */
export async function keepDocuments(transport: Pick<Transport, 'list' | 'load'>, shelf: Pick<Shelf, 'find'>, districtId: string): Promise<string[]> {
  const wanted = (await transport.list()).filter((entry) => entry.id === districtId || entry.districtId === districtId)
  for (const { id, sequence } of wanted) {
    const kept = await shelf.find(id)
    if (!kept || kept.isDeleted || kept.sequence < sequence) await transport.load(id)
  }
  return wanted.map(({ id }) => id)
}
