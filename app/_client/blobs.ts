import { hexOf } from './hex-of'
import { Unreachable } from './transport'

/** What is kept under a hash: the road graph, the drawn map, elevation. */
export type BlobKind = 'roads' | 'map' | 'terrain'

/** SHA-256 of the bytes, 64 hexadecimal digits; by the browser where the page is served securely. */
export async function hashOf(bytes: Uint8Array<ArrayBuffer>): Promise<string> {
  const subtle = (globalThis.crypto as Crypto | undefined)?.subtle
  return hexOf(subtle ? new Uint8Array(await subtle.digest('SHA-256', bytes)) : (await import('@noble/hashes/sha2.js')).sha256(bytes))
}

/**
 * Keeps data on the server under its hash; the same data again costs only the sending.
 *
 * @returns the hash
 * @throws Unreachable when no answer came; Error when the server will not have it
 */
export async function putBlob(kind: BlobKind, bytes: Uint8Array<ArrayBuffer>): Promise<string> {
  const hash = await hashOf(bytes)
  const response = await asked(`/api/blobs/${hash}?kind=${kind}`, { method: 'PUT', headers: { 'Content-Type': 'application/octet-stream' }, body: bytes })
  if (!response.ok) throw new Error(`the server answers ${response.status} to data ${hash}`)
  return hash
}

/**
 * Data by its hash, from the browser's cache after the first time.
 *
 * @returns the bytes, or undefined when the server has none under this hash
 * @throws Unreachable when no answer came, or what came has another hash
 */
export async function findBlob(hash: string): Promise<Uint8Array<ArrayBuffer> | undefined> {
  const response = await asked(`/api/blobs/${hash}`)
  if (response.status === 404) return undefined
  if (!response.ok) throw new Unreachable(String(response.status))
  const bytes = new Uint8Array(await response.arrayBuffer())
  if ((await hashOf(bytes)) !== hash) throw new Unreachable(`data ${hash} arrived damaged`)
  return bytes
}

async function asked(path: string, init?: RequestInit): Promise<Response> {
  const response = await fetch(path, init).catch((error: unknown) => {
    throw new Unreachable(String(error))
  })
  if (response.status >= 500) throw new Unreachable(String(response.status))
  return response
}
