import { describe, expect, it } from 'vitest'
import type { Edit } from '@/lib/plan'
import { httpTransport } from '@/app/_client/http-transport'
import { Unreachable } from '@/app/_client/transport'

type Call = { url: string; method: string; body: unknown }

function answering(...answers: (Response | Error)[]) {
  const calls: Call[] = []
  const fetcher: typeof fetch = async (input, init) => {
    calls.push({ url: String(input), method: init?.method ?? 'GET', body: init?.body ? JSON.parse(String(init.body)) : undefined })
    const answer = answers.shift()
    if (!answer || answer instanceof Error) throw answer ?? new TypeError('no answer')
    return answer
  }
  return { transport: httpTransport('/api', fetcher), calls }
}

const edit: Edit = { id: 'edit-0001', docId: 'P', base: 3, by: 'a', at: '2026-01-01T00:00:00Z', body: { kind: 'setFields', set: { name: 'Barn' } } }
const entry = { id: edit.id, sequence: 4, body: edit.body, touches: ['name'], by: 'a', at: edit.at }
const refusal = (status: number, code: string, extra: object = {}) => Response.json({ error: { code, path: '', sentence: 'Why.' }, ...extra }, { status })

describe('sending an edit', () => {
  it('is applied, with the history since its base', async () => {
    const { transport, calls } = answering(Response.json({ sequence: 4, history: [entry] }))
    expect(await transport.send([edit])).toEqual({ kind: 'applied', history: [entry] })
    expect(calls).toEqual([{ url: '/api/documents/P/edits', method: 'POST', body: { edits: [edit] } }])
  })

  it('brings the history back where it overlaps', async () => {
    const { transport } = answering(refusal(409, 'overlap', { history: [entry] }))
    expect(await transport.send([edit])).toEqual({ kind: 'overlap', history: [entry] })
  })

  it('is refused with the issue of the document’s own rules', async () => {
    const issue = { code: 'edit-item-missing', severity: 'block' as const, subjectIds: ['F1'], values: {} }
    const { transport } = answering(Response.json({ error: { code: issue.code, sentence: '', path: '', issue } }, { status: 422 }))
    expect(await transport.send([edit])).toEqual({ kind: 'refused', issue })
  })

  it.each([
    [404, 'not-found', 'document-missing'],
    [410, 'deleted', 'document-deleted'],
    [403, 'other-origin', 'server-refused'],
  ])('answered %i is an issue of its own', async (status, code, expected) => {
    const { transport } = answering(refusal(status, code))
    expect(await transport.send([edit])).toMatchObject({ kind: 'refused', issue: { code: expected } })
  })

  it('made on a state the server has not got calls for loading again', async () => {
    const { transport } = answering(refusal(409, 'base-ahead'))
    await expect(transport.send([edit])).rejects.toThrow(RangeError)
  })

  it.each([[503], [500], [502], [429]])('answered %i may be tried again', async (status) => {
    const { transport } = answering(refusal(status, 'busy'))
    await expect(transport.send([edit])).rejects.toThrow(Unreachable)
  })

  it('without an answer, or with one that is no JSON, may be tried again', async () => {
    const { transport } = answering(new TypeError('failed'), new Response('<html>'))
    await expect(transport.send([edit])).rejects.toThrow(Unreachable)
    await expect(transport.send([edit])).rejects.toThrow(Unreachable)
  })
})

describe('asking for history', () => {
  it('asks page after page until it has all', async () => {
    const page = (from: number, to: number) => ({
      sequence: 5,
      history: Array.from({ length: to - from + 1 }, (_, index) => ({ ...entry, id: `e${from + index}`, sequence: from + index })),
    })
    const { transport, calls } = answering(Response.json(page(2, 3)), Response.json(page(4, 5)))
    const { history, isDeleted } = await transport.since('P', 1)
    expect(history.map(({ sequence }) => sequence)).toEqual([2, 3, 4, 5])
    expect(isDeleted).toBe(false)
    expect(calls.map(({ url }) => url)).toEqual(['/api/documents/P/edits?after=1', '/api/documents/P/edits?after=3'])
  })

  it('of nothing new asks once', async () => {
    const { transport, calls } = answering(Response.json({ sequence: 5, history: [] }))
    expect((await transport.since('P', 5)).history).toEqual([])
    expect(calls).toHaveLength(1)
  })
})
