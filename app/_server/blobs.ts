import { createHash } from 'node:crypto'
import type { Database } from './open-database'
import { refusal } from './refusal'

export type StoredBlob = { hash: string; kind: string; size: number; bytes: Uint8Array<ArrayBuffer> }

/**
 * Keeps data under the hash of its bytes. The same data sent twice is kept once.
 *
 * @param hash SHA-256 that the sender computed, 64 hexadecimal digits
 * @throws Refusal if the bytes that arrived have another hash
 */
export async function putBlob(database: Database, hash: string, kind: string, bytes: Uint8Array<ArrayBuffer>): Promise<void> {
  if (createHash('sha256').update(bytes).digest('hex') !== hash) throw refusal('wrong-hash', {}, 'hash')
  const data = { hash, kind, size: bytes.byteLength, bytes }
  await database.blob.upsert({ where: { hash }, create: data, update: {}, select: { hash: true } })
}

/** @throws Refusal if there is none */
export async function getBlob(database: Database, hash: string): Promise<StoredBlob> {
  const row = await database.blob.findUnique({ where: { hash } })
  if (!row) throw refusal('not-found', { thing: 'data' }, 'hash')
  return { hash: row.hash, kind: row.kind, size: row.size, bytes: row.bytes }
}
