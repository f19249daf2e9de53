import { createHash } from 'node:crypto'
import { afterEach, expect, it, vi } from 'vitest'
import { storeElevation } from '@/app/_client'
import { terrainSetSchema } from '@/lib/plan'

afterEach(() => vi.unstubAllGlobals())

const terrainBlob = new Uint8Array([1, 2, 3, 4])
const hash = createHash('sha256').update(terrainBlob).digest('hex')
const made = { terrainBlob, summary: { fileNames: ['N43W072.hgt', 'N43W073.hgt'], verticalDoubt_ft: 52.5, doubtBasis: 'published' as const, step_ft: 304 } }

function stubServer(): string[] {
  const asked: string[] = []
  vi.stubGlobal('fetch', async (path: string) => {
    asked.push(path)
    return new Response(null, { status: 204 })
  })
  return asked
}

it('keeps heights under their hash and gives them to the district with their doubt', async () => {
  const asked = stubServer()
  const body = await storeElevation(made, '2026-05-01')
  expect(asked).toEqual([`/api/blobs/${hash}?kind=terrain`])
  if (body.kind !== 'setFields') throw new Error(body.kind)
  expect(terrainSetSchema.parse(body.set['terrain'])).toEqual({
    hash, name: 'N43W072.hgt, N43W073.hgt', importedOn: '2026-05-01', attribution: '', verticalDoubt_ft: 52.5, doubtBasis: 'published', step_ft: 304,
  })
})

it('still names whose data it is when the same files come again, and not when others do', async () => {
  stubServer()
  const before = { hash, name: 'N43W072.hgt, N43W073.hgt', importedOn: '2026-01-01', attribution: 'A mapping agency' }
  expect(await storeElevation(made, '2026-05-01', before)).toMatchObject({ set: { terrain: { attribution: 'A mapping agency' } } })
  expect(await storeElevation(made, '2026-05-01', { ...before, name: 'other.tif' })).toMatchObject({ set: { terrain: { attribution: '' } } })
})
