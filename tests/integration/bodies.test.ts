import { describe, expect, test } from 'vitest'
import { readBytes, readJson } from '@/app/_server/read-body'

const MB = 1024 * 1024

/** A request whose body comes in pieces and says nothing of its length; counts what was asked for. */
function streamed(pieceCount: number, piece: Uint8Array, type = 'application/json') {
  const taken = { count: 0, cancelled: false }
  const body = new ReadableStream<Uint8Array>({
    pull(controller) {
      if (taken.count >= pieceCount) return controller.close()
      taken.count += 1
      controller.enqueue(piece)
    },
    cancel() {
      taken.cancelled = true
    },
  })
  const init: RequestInit & { duplex: 'half' } = { method: 'POST', headers: { 'content-type': type }, body, duplex: 'half' }
  return { request: new Request('http://localhost/x', init), taken }
}

const json = (text: string | Uint8Array<ArrayBuffer>, headers: Record<string, string> = { 'content-type': 'application/json' }) =>
  new Request('http://localhost/x', { method: 'POST', headers, body: text })

describe('a body larger than allowed', () => {
  test('is refused while it arrives, and the rest is never taken', async () => {
    const { request, taken } = streamed(1000, new Uint8Array(MB))
    await expect(readBytes(request, 'application/json', 2)).rejects.toMatchObject({ code: 'too-large', status: 413 })
    expect(taken.cancelled).toBe(true)
    expect(taken.count).toBeLessThan(6)
  })

  test('is refused before it arrives when it says of itself that it is far too large', async () => {
    const request = json('{}', { 'content-type': 'application/json', 'content-length': String(5 * MB) })
    await expect(readBytes(request, 'application/json', 2)).rejects.toMatchObject({ status: 413 })
  })

  test('is heard out, and not kept, when it is only somewhat too large', async () => {
    const { request, taken } = streamed(3, new Uint8Array(MB))
    await expect(readBytes(request, 'application/json', 2)).rejects.toMatchObject({ status: 413 })
    expect(taken).toEqual({ count: 3, cancelled: false })
  })

  test('of exactly the limit is let in', async () => {
    const { request } = streamed(2, new Uint8Array(MB), 'application/octet-stream')
    expect((await readBytes(request, 'application/octet-stream', 2)).byteLength).toBe(2 * MB)
  })
})

test.each(['text/plain', 'application/x-www-form-urlencoded', 'multipart/form-data; boundary=x', ''])('JSON sent as "%s" is refused', async (type) => {
  await expect(readJson(json('{}', type ? { 'content-type': type } : {}), 2)).rejects.toMatchObject({ code: 'wrong-content-type', status: 415 })
})

test('JSON may name its character set', async () => {
  expect(await readJson(json('{"a":"ü"}', { 'content-type': 'Application/JSON; charset=utf-8' }), 2)).toEqual({ a: 'ü' })
})

test.each(['', '{', '{"a":NaN}', '['.repeat(300_000)])('what is not JSON is refused', async (text) => {
  await expect(readJson(json(text), 2)).rejects.toMatchObject({ code: 'not-json', status: 400 })
})

test('text in a broken encoding is refused rather than mended', async () => {
  await expect(readJson(json(new Uint8Array([0x22, 0xff, 0x22])), 2)).rejects.toMatchObject({ code: 'not-json' })
})
