import { createHash, randomBytes } from 'node:crypto'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { getBlob, putBlob } from '@/app/_server/blobs'
import { scratchDatabase, type Scratch } from './support/scratch-database'

let scratch: Scratch
beforeAll(async () => {
  scratch = await scratchDatabase()
})
afterAll(() => scratch.remove())

const hashOf = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex')
const random = (size: number): Uint8Array<ArrayBuffer> => new Uint8Array(randomBytes(size))

// FIPS 180-4's own example message, in NIST's "SHA-256 example values".
test('the hash is SHA-256', async () => {
  const bytes = new TextEncoder().encode('abc')
  await putBlob(scratch.database, 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad', 'roads', bytes)
})

test.each([0, 1, 5000, 20 * 1024 * 1024])('%i bytes come back as they were', async (size) => {
  const bytes = random(size)
  await putBlob(scratch.database, hashOf(bytes), 'terrain', bytes)
  const stored = await getBlob(scratch.database, hashOf(bytes))
  expect(stored).toMatchObject({ kind: 'terrain', size })
  expect(Buffer.compare(stored.bytes, bytes)).toBe(0)
})

test('data that is not what its name says is refused and not kept', async () => {
  const bytes = random(100)
  const other = hashOf(random(100))
  await expect(putBlob(scratch.database, other, 'roads', bytes)).rejects.toMatchObject({ code: 'wrong-hash', status: 422 })
  await expect(getBlob(scratch.database, other)).rejects.toMatchObject({ code: 'not-found', status: 404 })
})

test('the same data sent twice is kept once', async () => {
  const bytes = random(100)
  await putBlob(scratch.database, hashOf(bytes), 'roads', bytes)
  await putBlob(scratch.database, hashOf(bytes), 'roads', bytes)
  expect(await scratch.database.blob.count({ where: { hash: hashOf(bytes) } })).toBe(1)
})
