import { documentKindOf, type District, type DocumentKind } from '@/lib/plan'
import { getEventDisk, getOutbox, getShelf, type Shelved } from '../_client'
import { DATA_CACHE, dataAddress } from '../_shell/caches'
import { hashesOf } from '../_shell/keep-district'

/** What this device has of one district. */
export type KeptDistrict = {
  id: string
  name: string
  keptAt: string
  planCount: number
  exerciseCount: number
  logCount: number
  /** Roads, map and elevation the district names, how many of them are here, and what those take. */
  dataCount: number
  dataHereCount: number
  size_bytes: number
  isWhole: boolean
  /** Changes, new documents, events of logs and open choices of it that the station does not have. */
  waitingCount: number
}

/** Size of kept data, or undefined when it is not here. */
export type SizeOf = (hash: string) => Promise<number | undefined>

/** Sorts what is on the shelf into districts. */
export async function keptDistricts(shelved: readonly Shelved[], waitingOf: (docId: string) => Promise<number>, sizeOf: SizeOf): Promise<KeptDistrict[]> {
  const there = shelved.filter(({ isDeleted }) => !isDeleted)
  const districts = there.filter(({ doc }) => doc.districtId === undefined)
  return Promise.all(districts.map(async ({ doc, keptAt }) => {
    const own = there.filter((one) => one.doc.districtId === doc.id)
    const countOf = (kind: DocumentKind) => own.filter((one) => documentKindOf(one.doc) === kind).length
    const hashes = hashesOf(doc as District)
    const sizes = (await Promise.all(hashes.map(sizeOf))).filter((size) => size !== undefined)
    const waiting = await Promise.all([doc.id, ...own.map((one) => one.doc.id)].map(waitingOf))
    return {
      id: doc.id,
      name: String(doc.name),
      keptAt: [keptAt, ...own.map((one) => one.keptAt)].sort().at(-1) ?? keptAt,
      planCount: countOf('plan'),
      exerciseCount: countOf('exercise'),
      logCount: countOf('log'),
      dataCount: hashes.length,
      dataHereCount: sizes.length,
      size_bytes: sizes.reduce((sum, size) => sum + size, 0),
      isWhole: sizes.length === hashes.length,
      waitingCount: waiting.reduce((sum, count) => sum + count, 0),
    }
  }))
}

/** As it stands on this device now. */
export async function readKeptDistricts(): Promise<KeptDistrict[]> {
  const outbox = getOutbox()
  const created = await outbox.created()
  const waitingOf = async (docId: string) =>
    (await outbox.unsentOf(docId)).length + (await outbox.conflictsOf(docId)).length + created.filter(({ doc }) => doc.id === docId).length + (await getEventDisk().unsentCountOf(docId))
  const cache = 'caches' in globalThis ? await caches.open(DATA_CACHE) : undefined
  const sizeOf = async (hash: string) => {
    const response = await cache?.match(dataAddress(hash))
    return response && (await response.blob()).size
  }
  return keptDistricts(await getShelf().all(), waitingOf, sizeOf)
}
