import { createHash, randomBytes } from 'node:crypto'
import { request as httpRequest } from 'node:http'
import { expect, test } from './support/test'

const district = (id: string) => ({
  id, name: 'Alder Hollow', stations: [], draftSites: [], hazards: [], roadNotes: [], apparatus: [], equipment: [],
  sources: [{ id: 'S1', name: 'Mill pond', kind: 'pond', point: { lat: 50, lon: 11 } }],
})

const edit = (id: string, docId: string, base: number, set: object) => ({
  id, docId, base, by: 'A. Tester', at: '2026-01-01T00:00:00Z', body: { kind: 'setFields', collection: 'sources', id: 'S1', set },
})

test('a document goes through the server and back: kept, changed, deleted, restored', async ({ request }) => {
  const id = `api-${Date.now()}`
  const created = await request.post('/api/documents', { data: { doc: district(id) } })
  expect([created.status(), await created.json()]).toEqual([201, { doc: district(id), sequence: 0, isDeleted: false }])

  const sent = await request.post(`/api/documents/${id}/edits`, { data: { edits: [edit('edit-0001', id, 0, { usable_gal: 5000 })] } })
  expect(await sent.json()).toMatchObject({ sequence: 1, history: [{ id: 'edit-0001', sequence: 1 }] })

  const clash = await request.post(`/api/documents/${id}/edits`, { data: { edits: [edit('edit-0002', id, 0, { usable_gal: 7000 })] } })
  expect(clash.status()).toBe(409)
  expect(await clash.json()).toMatchObject({ error: { code: 'overlap' }, overlaps: [{ path: 'sources/S1/usable_gal', mine: 7000, theirs: 5000 }] })

  const history = await (await request.get(`/api/documents/${id}/edits?after=0`)).json()
  expect(history).toMatchObject({ sequence: 1, isDeleted: false, history: [{ id: 'edit-0001' }] })

  const ids = async (query = '') => ((await (await request.get(`/api/documents${query}`)).json()) as { documents: { id: string }[] }).documents.map((one) => one.id)
  expect((await request.delete(`/api/documents/${id}`)).status()).toBe(204)
  expect(await ids()).not.toContain(id)
  expect(await ids('?withDeleted=1')).toContain(id)
  expect((await request.post(`/api/documents/${id}/restore`)).status()).toBe(204)
  expect(await ids('?kind=district')).toContain(id)
  expect(await (await request.get(`/api/documents/${id}`)).json()).toMatchObject({ sequence: 1, doc: { sources: [{ usable_gal: 5000 }] } })
})

test('what is wrong with a request is said with a code, a path and a sentence', async ({ request }) => {
  const answers = [
    [await request.post('/api/documents', { data: { doc: { ...district('x1'), sources: [{ id: 'S1', name: 'Pond', kind: 'puddle', point: { lat: 1, lon: 1 } }] } } }), 422],
    [await request.post('/api/documents', { data: { doc: district('x2'), extra: 1 } }), 422],
    [await request.post('/api/documents', { headers: { 'Content-Type': 'application/json' }, data: Buffer.from('{"doc":') }), 400],
    [await request.post('/api/documents', { headers: { 'Content-Type': 'text/plain' }, data: '{}' }), 415],
    [await request.get('/api/documents?kind=other'), 422],
    [await request.get('/api/documents/none'), 404],
    [await request.post('/api/documents/none/edits', { data: { edits: [] } }), 422],
    [await request.get('/api/blobs/short'), 422],
  ] as const
  for (const [answer, status] of answers) {
    expect(answer.status(), answer.url()).toBe(status)
    expect(await answer.json(), answer.url()).toMatchObject({
      error: { code: expect.stringMatching(/^[a-z-]+$/) as unknown, path: expect.any(String) as unknown, sentence: expect.stringMatching(/^.+\.$/) as unknown },
    })
  }
})

test('answers of the API can neither run nor be framed nor be kept by others', async ({ request }) => {
  const headers = (await request.get('/api/health')).headers()
  expect(headers).toMatchObject({
    'content-security-policy': "default-src 'none'; frame-ancestors 'none'", 'x-content-type-options': 'nosniff', 'cache-control': 'no-store',
  })
})

test('data of 64 MB goes through and comes back; more, and a wrong name, are refused', async ({ server }) => {
  test.setTimeout(240_000)
  // Node's own client: the test runner's would keep every byte for its trace.
  const once = (name: string, body: Uint8Array<ArrayBuffer>) =>
    fetch(`${server.address}/api/blobs/${name}?kind=roads`, { method: 'PUT', headers: { 'Content-Type': 'application/octet-stream' }, body })
  // A kept connection may have been closed by the server while the bytes were hashed here: the same data may be sent again.
  const put = (name: string, body: Uint8Array<ArrayBuffer>) => once(name, body).catch(() => once(name, body))
  const bytes = new Uint8Array(randomBytes(64 * 1024 * 1024))
  const hash = createHash('sha256').update(bytes).digest('hex')
  expect((await put(hash, bytes)).status).toBe(204)
  const back = await fetch(`${server.address}/api/blobs/${hash}`)
  expect(createHash('sha256').update(new Uint8Array(await back.arrayBuffer())).digest('hex')).toBe(hash)
  expect(back.headers.get('cache-control')).toContain('immutable')
  expect((await put('0'.repeat(64), new TextEncoder().encode('other'))).status).toBe(422)
  expect((await put(hash, new Uint8Array(64 * 1024 * 1024 + 1))).status).toBe(413)
})

/** Sends pieces without saying how many there will be, until an answer comes. */
function streamUntilAnswered(address: string, most_MB: number): Promise<{ status: number; sent_MB: number }> {
  return new Promise((resolve, reject) => {
    let sent_MB = 0
    let isAnswered = false
    const outgoing = httpRequest(`${address}/api/documents`, { method: 'POST', headers: { 'Content-Type': 'application/json' } }, (answer) => {
      isAnswered = true
      answer.resume()
      resolve({ status: answer.statusCode ?? 0, sent_MB })
      outgoing.destroy()
    })
    outgoing.on('error', (error) => {
      if (!isAnswered) reject(error)
    })
    const piece = Buffer.alloc(1024 * 1024, 0x20)
    const more = () => {
      if (isAnswered) return
      if (sent_MB >= most_MB) return outgoing.end()
      sent_MB += 1
      outgoing.write(piece, () => setTimeout(more, 1))
    }
    more()
  })
}

test('a body without an end is cut off at the limit', async ({ server }) => {
  const { status, sent_MB } = await streamUntilAnswered(server.address, 200)
  expect(status).toBe(413)
  expect(sent_MB).toBeLessThan(200)
})
