import { afterAll, beforeAll, expect, test } from 'vitest'
import * as documents from '@/app/api/documents/route'
import * as document from '@/app/api/documents/[id]/route'
import * as edits from '@/app/api/documents/[id]/edits/route'
import * as restoring from '@/app/api/documents/[id]/restore/route'
import { Client } from '@/app/_client/client'
import { httpTransport } from '@/app/_client/http-transport'
import { mintId } from '@/app/_client/mint-id'
import type { Database } from '@/app/_server/open-database'
import type { EditableDocument } from '@/lib/plan'
import { manualTimers } from '../unit/client/manual-timers'
import { sampleDistrict, samplePlan } from '../unit/client/sample-documents'
import { scratchDatabase, type Scratch } from './support/scratch-database'

const held = globalThis as typeof globalThis & { millraceDatabase?: Promise<Database> }
let scratch: Scratch

beforeAll(async () => {
  scratch = await scratchDatabase()
  held.millraceDatabase = Promise.resolve(scratch.database)
})
afterAll(async () => {
  delete held.millraceDatabase
  await scratch.remove()
})

/** The server's own routes, called as the browser would, without a network between. */
const house: typeof fetch = async (input, init) => {
  const request = new Request(new URL(String(input), 'http://localhost'), { ...init, headers: { ...(init?.headers as Record<string, string>), host: 'localhost' } })
  const [, , , id, part] = new URL(request.url).pathname.split('/')
  const context = <P>(params: P) => ({ params: Promise.resolve(params) })
  const method = request.method
  if (id === undefined) return method === 'POST' ? documents.POST(request, context({})) : documents.GET(request, context({}))
  if (part === 'restore') return restoring.POST(request, context({ id }))
  if (part === 'edits') return method === 'POST' ? edits.POST(request, context({ id })) : edits.GET(request, context({ id }))
  return method === 'DELETE' ? document.DELETE(request, context({ id })) : document.GET(request, context({ id }))
}

const newClient = (actor: string) => new Client({ transport: httpTransport('/api', house), timers: manualTimers(), actor })

/** A district with a plan of its own on the server, and two windows that hold them. */
async function twoWindows(): Promise<{ a: Client; b: Client; districtId: string; planId: string }> {
  const [districtId, planId] = [mintId(), mintId()]
  const [a, b] = [newClient('window a'), newClient('window b')]
  const refused = await a.create([{ ...sampleDistrict(), id: districtId }, { ...samplePlan(), id: planId, districtId }], { label: 'create' })
  if (refused) throw new Error(refused.code)
  for (const client of [a, b]) for (const id of [districtId, planId]) await client.open(id).load()
  return { a, b, districtId, planId }
}

const setLift = (lift_ft: number) => ({ kind: 'setFields' as const, collection: 'fillSites', id: 'F1', set: { lift_ft } })
const liftOf = (doc: EditableDocument | undefined) => (doc?.fillSites as { id: string; lift_ft?: number }[]).find(({ id }) => id === 'F1')?.lift_ft

test('changes of two windows to different places both stand', async () => {
  const { a, b, planId } = await twoWindows()
  a.edit(planId, setLift(12), { label: 'lift' })
  b.edit(planId, { kind: 'setFields', set: { name: 'Sawmill' } }, { label: 'name' })
  await a.flush()
  await b.flush()
  await a.pull(planId)
  expect(a.view(planId)).toMatchObject({ sequence: 2, unsentCount: 0, conflicts: [] })
  expect(a.view(planId).doc).toEqual(b.view(planId).doc)
  expect(liftOf(b.view(planId).doc)).toBe(12)
})

test('of two changes to one place both values are shown, and the chosen one is kept', async () => {
  const { a, b, planId } = await twoWindows()
  a.edit(planId, setLift(12), { label: 'lift' })
  b.edit(planId, setLift(15), { label: 'lift' })
  await a.flush()
  await b.flush()
  const [conflict] = b.view(planId).conflicts
  expect(conflict).toMatchObject({ by: 'window a', values: [{ path: 'fillSites/F1/lift_ft', mine: 15, theirs: 12 }] })
  b.resolve(planId, conflict!.id, 'mine', { label: 'lift' })
  await b.flush()
  await a.pull(planId)
  expect(liftOf(a.view(planId).doc)).toBe(15)
})

test('a change to what the other window has taken away is a conflict, not a loss', async () => {
  const { a, b, planId } = await twoWindows()
  a.edit(planId, { kind: 'removeItem', collection: 'fillSites', id: 'F1' }, { label: 'remove' })
  b.edit(planId, setLift(15), { label: 'lift' })
  await a.flush()
  await b.flush()
  expect(b.view(planId).conflicts).toMatchObject([{ values: [{ mine: 15, theirs: undefined }] }])
})

test('undo across documents reaches the server as edits, and brings back what it had', async () => {
  const { a, districtId, planId } = await twoWindows()
  const before = [a.view(districtId).doc, a.view(planId).doc]
  const lake = { id: 'S2', name: 'Lake', kind: 'lake', point: { lat: 50, lon: 11 } }
  a.act([
    { docId: districtId, body: { kind: 'addItem', collection: 'sources', item: lake } },
    { docId: planId, body: { kind: 'setFields', collection: 'fillSites', id: 'F1', set: { sourceId: 'S2' } } },
  ], { label: 'use the lake' })
  await a.flush()
  await a.undo()
  await a.flush()
  const fresh = newClient('later')
  for (const id of [districtId, planId]) await fresh.open(id).load()
  expect([fresh.view(districtId).doc, fresh.view(planId).doc]).toEqual(before)
  expect(fresh.view(planId).sequence).toBe(2)
})

test('a document put away is seen to be so by the other window, takes no edit, and comes back by undo', async () => {
  const { a, b, planId } = await twoWindows()
  expect(await a.remove(planId, { label: 'delete' })).toBeUndefined()
  await b.pull(planId)
  expect(b.view(planId).status).toBe('deleted')
  expect(b.edit(planId, setLift(3), { label: 'lift' })).toMatchObject({ code: 'document-not-open' })
  expect(await a.undo()).toBeUndefined()
  await b.pull(planId)
  expect(b.view(planId).status).toBe('ready')
})

test('a document that does not exist is missing', async () => {
  const client = newClient('a')
  await client.open('nowhere').load()
  expect(client.view('nowhere')).toMatchObject({ status: 'missing', issue: { code: 'document-missing' } })
})
