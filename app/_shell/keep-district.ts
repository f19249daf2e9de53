import { documentKindOf, type District } from '@/lib/plan'
import { findBlob, getClient, getEventLog, getShelf } from '../_client'
import { DATA_CACHE, dataAddress } from './caches'

/** Hashes of all that a district's map and roads are drawn from. */
export const hashesOf = ({ roads, map, terrain }: Pick<District, 'roads' | 'map' | 'terrain'>): string[] =>
  [roads, map, terrain].flatMap((one) => (one ? [one.hash] : []))

/** True when data under this hash is on this device. */
const isDataHere = async (hash: string): Promise<boolean> => (await caches.match(dataAddress(hash), { cacheName: DATA_CACHE })) !== undefined

/**
 * Brings a district whole to this device: the document, its plans, exercises and logs with their events, its roads, map and elevation.
 *
 * @param onProgress how many of how many parts are here
 * @throws Unreachable when the station is out of reach before all of it is here; what came stays
 */
export async function keepDistrict(districtId: string, onProgress?: (done: number, of: number) => void): Promise<void> {
  const planIds = await getClient().keepDocuments(districtId)
  const kept = await getShelf().find(districtId)
  const hashes = kept ? hashesOf(kept.doc as District) : []
  const of = planIds.length + hashes.length
  let done = planIds.length
  onProgress?.(done, of)
  for (const hash of hashes) {
    if (!(await isDataHere(hash))) await findBlob(hash)
    onProgress?.((done += 1), of)
  }
  for (const id of planIds) {
    const one = await getShelf().find(id)
    if (one && documentKindOf(one.doc) === 'log') await getEventLog(id).sync()
  }
}

/** Takes a district off this device; at the station it stays. Refused by whoever calls while something of it is unsent. */
export async function dropDistrict(districtId: string): Promise<void> {
  const shelf = getShelf()
  const all = await shelf.all()
  const own = all.filter(({ doc }) => doc.id === districtId || doc.districtId === districtId)
  const others = all.filter((one) => !own.includes(one))
  const needed = new Set(others.flatMap(({ doc }) => hashesOf(doc as District)))
  await shelf.forget(own.map(({ doc }) => doc.id))
  const cache = await caches.open(DATA_CACHE)
  for (const hash of own.flatMap(({ doc }) => hashesOf(doc as District))) if (!needed.has(hash)) await cache.delete(dataAddress(hash))
}
