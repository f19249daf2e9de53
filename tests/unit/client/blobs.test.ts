import { createHash } from 'node:crypto'
import { afterEach, expect, it, vi } from 'vitest'
import { hashOf } from '@/app/_client/blobs'
import { mintId } from '@/app/_client/mint-id'

afterEach(() => vi.unstubAllGlobals())

const bytes = new Uint8Array(Array.from({ length: 1000 }, (_, index) => index % 251))
const expected = createHash('sha256').update(bytes).digest('hex')

it('hashes alike with and without the browser’s own cryptography', async () => {
  expect(await hashOf(bytes)).toBe(expected)
  vi.stubGlobal('crypto', { getRandomValues: crypto.getRandomValues.bind(crypto) })
  expect(await hashOf(bytes)).toBe(expected)
})

it('mints version 4 ids, no two alike, also where the page is not served securely', () => {
  vi.stubGlobal('crypto', { getRandomValues: crypto.getRandomValues.bind(crypto) })
  const ids = Array.from({ length: 100 }, () => mintId())
  expect(new Set(ids).size).toBe(100)
  for (const id of ids) expect(id).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-4[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/)
})
