import { beforeEach, describe, expect, it } from 'vitest'
import { Client } from '@/app/_client/client'
import { memoryOutbox } from '@/app/_client/outbox'
import { putAwayOf } from '@/app/_frame/put-away'
import { liftOf, opened, setLift, settled } from './client-steps'
import { FakeServer } from './fake-server'
import { manualTimers } from './manual-timers'
import { sampleDistrict, samplePlan } from './sample-documents'

let server: FakeServer
let timers: ReturnType<typeof manualTimers>

function newClient(options: { actor?: string; outbox?: ReturnType<typeof memoryOutbox> } = {}): Client {
  return new Client({ transport: server.transport(), timers, now: () => '2026-01-01T00:00:00Z', ...options })
}

beforeEach(() => {
  server = new FakeServer()
  timers = manualTimers()
  for (const doc of [sampleDistrict(), samplePlan()]) server.kept.set(doc.id, { doc, history: [], isDeleted: false })
})

describe('editing', () => {
  it('shows an edit at once, and saves it', async () => {
    const client = await opened(newClient(), 'P')
    expect(client.edit('P', setLift(12), { label: 'lift' })).toBeUndefined()
    expect(liftOf(client.view('P').doc)).toBe(12)
    expect(client.saveState()).toMatchObject({ state: 'saving', unsentCount: 1 })
    expect(liftOf(server.doc('P'))).toBe(10)
    await client.flush()
    expect(liftOf(server.doc('P'))).toBe(12)
    expect(client.view('P')).toMatchObject({ sequence: 1, unsentCount: 0, sending: 'idle' })
    expect(client.saveState()).toMatchObject({ state: 'saved', unsentCount: 0 })
  })

  it('sends by itself after a short wait, once for edits that come together', async () => {
    const client = await opened(newClient(), 'P')
    client.edit('P', setLift(12), { label: 'lift' })
    client.edit('P', setLift(13), { label: 'lift' })
    expect(timers.waits).toHaveLength(1)
    timers.runAll()
    await settled()
    expect(liftOf(server.doc('P'))).toBe(13)
  })

  it('changes nothing when one edit of an act is refused', async () => {
    const client = await opened(newClient(), 'P', 'D')
    const before = client.view('P').doc
    const refused = client.act(
      [
        { docId: 'P', body: setLift(12) },
        { docId: 'D', body: { kind: 'removeItem', collection: 'sources', id: 'nowhere' } },
      ],
      { label: 'two' },
    )
    expect(refused).toMatchObject({ code: 'edit-item-missing' })
    expect(client.view('P').doc).toBe(before)
    expect(client.undoState().canUndo).toBe(false)
    expect(client.saveState().unsentCount).toBe(0)
  })

  it('refuses to edit a document that has not come', () => {
    expect(newClient().edit('P', setLift(12), { label: 'lift' })).toMatchObject({ code: 'document-not-open' })
  })

  it('says so when the document does not exist', async () => {
    const client = await opened(newClient(), 'nowhere')
    expect(client.view('nowhere')).toMatchObject({ status: 'missing', issue: { code: 'document-missing' } })
  })
})

describe('a server that is away', () => {
  it('keeps trying with longer pauses, and loses nothing', async () => {
    const client = await opened(newClient(), 'P')
    server.isAway = true
    client.edit('P', setLift(12), { label: 'lift' })
    const pauses: (number | undefined)[] = []
    for (let turn = 0; turn < 8; turn += 1) {
      timers.runAll()
      await settled()
      pauses.push(timers.waits.at(-1))
    }
    expect(client.saveState()).toMatchObject({ state: 'waiting', unsentCount: 1 })
    expect(pauses).toEqual([1000, 2000, 4000, 8000, 16000, 30000, 30000, 30000])
    server.isAway = false
    timers.runAll()
    await settled()
    expect(liftOf(server.doc('P'))).toBe(12)
    expect(client.saveState().state).toBe('saved')
  })

  it('applies an edit once though its answer was lost', async () => {
    const client = await opened(newClient(), 'P')
    server.losesAnswers = true
    client.edit('P', setLift(12), { label: 'lift' })
    await client.flush()
    expect(client.saveState().state).toBe('waiting')
    server.losesAnswers = false
    await client.flush()
    expect(server.kept.get('P')!.history).toHaveLength(1)
    expect(server.sent).toHaveLength(2)
    expect(client.view('P')).toMatchObject({ sequence: 1, unsentCount: 0 })
  })

  it('sends what an earlier visit left unsent', async () => {
    const outbox = memoryOutbox()
    const first = await opened(newClient({ outbox }), 'P')
    server.isAway = true
    first.edit('P', setLift(12), { label: 'lift' })
    await first.flush()
    server.isAway = false
    const second = await opened(newClient({ outbox }), 'P')
    expect(liftOf(second.view('P').doc)).toBe(12)
    await second.flush()
    expect(liftOf(server.doc('P'))).toBe(12)
    expect(await outbox.unsentOf('P')).toEqual([])
  })

  it('shows both values when what an earlier visit left has been changed elsewhere since', async () => {
    const outbox = memoryOutbox()
    const first = await opened(newClient({ outbox }), 'P')
    server.isAway = true
    first.edit('P', setLift(12), { label: 'lift' })
    await first.flush()
    server.isAway = false
    const other = await opened(newClient(), 'P')
    other.edit('P', setLift(15), { label: 'lift' })
    await other.flush()
    const second = await opened(newClient({ outbox }), 'P')
    await second.flush()
    expect(second.view('P').conflicts).toMatchObject([{ values: [{ path: 'fillSites/F1/lift_ft', mine: 12, theirs: 15 }] }])
    expect(liftOf(server.doc('P'))).toBe(15)
  })

  it('shows a clash once though the device went off before the edit it came from had left it', async () => {
    const outbox = memoryOutbox()
    const first = await opened(newClient({ outbox }), 'P')
    server.isAway = true
    first.edit('P', setLift(12), { label: 'lift' })
    await first.flush()
    server.isAway = false
    const other = await opened(newClient(), 'P')
    other.edit('P', setLift(15), { label: 'lift' })
    await other.flush()
    const cutOff = await opened(newClient({ outbox: { ...outbox, forget: async () => undefined } }), 'P')
    await cutOff.flush()
    await settled()
    const again = await opened(newClient({ outbox }), 'P')
    await again.flush()
    expect(again.view('P')).toMatchObject({ unsentCount: 0, conflicts: [{ values: [{ path: 'fillSites/F1/lift_ft', mine: 12, theirs: 15 }] }] })
    expect(again.view('P').conflicts).toHaveLength(1)
    expect(await outbox.unsentOf('P')).toEqual([])
  })
})

describe('an act of very many edits', () => {
  const COUNT = 600
  const pond = (k: number) => ({ kind: 'addItem' as const, collection: 'sources', item: { id: `N${k}`, name: `Pond ${k}`, kind: 'pond', point: { lat: 50, lon: 11 } } })
  const ponds = () => Array.from({ length: COUNT }, (_, k) => pond(k))
  const sourceIds = () => (server.doc('D').sources as { id: string }[]).map(({ id }) => id)

  it('is stored in few requests, in its order, and goes back as one', async () => {
    const client = await opened(newClient(), 'D')
    client.edit('D', ponds(), { label: 'file' })
    await client.flush()
    expect(server.requestCount).toBe(3)
    expect(sourceIds()).toEqual(['S1', ...ponds().map(({ item }) => item.id)])
    await client.undo()
    await client.flush()
    expect(sourceIds()).toEqual(['S1'])
    expect(client.undoState().canUndo).toBe(false)
    await client.redo()
    await client.flush()
    expect(sourceIds()).toHaveLength(COUNT + 1)
    expect(client.view('D')).toMatchObject({ unsentCount: 0, conflicts: [] })
  })

  it('leaves in doubt only what another has changed meanwhile, and stores the rest', async () => {
    const other = await opened(newClient({ actor: 'other' }), 'D')
    const client = await opened(newClient(), 'D')
    other.edit('D', { kind: 'setFields', collection: 'sources', id: 'S1', set: { usable_gal: 9 } }, { label: 'theirs' })
    await other.flush()
    client.edit('D', [...ponds().slice(0, 300), { kind: 'setFields', collection: 'sources', id: 'S1', set: { usable_gal: 5 } }, ...ponds().slice(300)], { label: 'file' })
    await client.flush()
    expect(client.view('D').conflicts).toMatchObject([{ values: [{ path: 'sources/S1/usable_gal', mine: 5, theirs: 9 }] }])
    expect(sourceIds()).toHaveLength(COUNT + 1)
    expect(server.doc('D').sources).toMatchObject([{ id: 'S1', usable_gal: 9 }, ...ponds().map(({ item: { id } }) => ({ id }))])
  })

  it('finds the one that the server will not have, says so, and stores the rest', async () => {
    const client = await opened(newClient(), 'D')
    client.edit('D', ponds(), { label: 'file' })
    server.refusesId = 'N321'
    await client.flush()
    expect(sourceIds()).toEqual(['S1', ...ponds().map(({ item }) => item.id).filter((id) => id !== 'N321')])
    expect(client.saveState()).toMatchObject({ unsentCount: 0, refusals: [{ label: 'file' }] })
    expect(server.requestCount).toBeLessThan(40)
  })

  it('goes on where it was broken off', async () => {
    const outbox = memoryOutbox()
    const first = await opened(newClient({ outbox }), 'D')
    server.goesAwayAfter = 1
    first.edit('D', ponds(), { label: 'file' })
    await first.flush()
    expect(first.saveState()).toMatchObject({ state: 'waiting', unsentCount: COUNT - 250 })
    server.isAway = false
    server.goesAwayAfter = Infinity
    const second = await opened(newClient({ outbox }), 'D')
    await second.flush()
    expect(sourceIds()).toEqual(['S1', ...ponds().map(({ item }) => item.id)])
  })
})

describe('a page that goes away', () => {
  it('sends what it has, and the next visit does not send it again', async () => {
    const outbox = memoryOutbox()
    const first = await opened(newClient({ outbox }), 'P')
    first.edit('P', setLift(12), { label: 'lift' })
    first.sendLast()
    expect(liftOf(server.doc('P'))).toBe(12)
    const second = newClient({ outbox })
    await second.resume()
    await settled()
    expect(second.view('P')).toMatchObject({ sequence: 1, unsentCount: 0, conflicts: [] })
    expect(server.sent).toEqual([])
    expect(await outbox.docIds()).toEqual([])
  })
})

describe('two windows', () => {
  it('keep both changes to different places', async () => {
    const a = await opened(newClient({ actor: 'a' }), 'P')
    const b = await opened(newClient({ actor: 'b' }), 'P')
    a.edit('P', setLift(12), { label: 'lift' })
    b.edit('P', { kind: 'setFields', set: { name: 'Sawmill' } }, { label: 'name' })
    await a.flush()
    await b.flush()
    await a.pull('P')
    expect(a.view('P').doc).toEqual(b.view('P').doc)
    expect(a.view('P').doc).toMatchObject({ name: 'Sawmill' })
    expect(liftOf(b.view('P').doc)).toBe(12)
  })

  it('show both values where they overlap, and the chosen one stands', async () => {
    const a = await opened(newClient({ actor: 'a' }), 'P')
    const b = await opened(newClient({ actor: 'b' }), 'P')
    a.edit('P', setLift(12), { label: 'lift' })
    b.edit('P', setLift(15), { label: 'lift' })
    await a.flush()
    await b.flush()
    const [conflict] = b.view('P').conflicts
    expect(conflict).toMatchObject({ by: 'a', values: [{ path: 'fillSites/F1/lift_ft', mine: 15, theirs: 12 }] })
    expect(liftOf(b.view('P').doc)).toBe(12)
    expect(b.undoState().canUndo).toBe(false)
    b.resolve('P', conflict!.id, 'mine', { label: 'lift' })
    await b.flush()
    expect(liftOf(server.doc('P'))).toBe(15)
    expect(b.view('P').conflicts).toEqual([])
  })

  it('can keep what was changed of an item that the other took away', async () => {
    const a = await opened(newClient(), 'P')
    const b = await opened(newClient(), 'P')
    a.edit('P', { kind: 'removeItem', collection: 'fillSites', id: 'F1' }, { label: 'remove' })
    b.edit('P', setLift(15), { label: 'lift' })
    await a.flush()
    await b.flush()
    const [conflict] = b.view('P').conflicts
    expect(conflict).toMatchObject({ values: [{ mine: 15, theirs: undefined }] })
    expect(b.resolve('P', conflict!.id, 'mine', { label: 'lift' })).toBeUndefined()
    await b.flush()
    expect(server.doc('P').fillSites).toMatchObject([{ id: 'F1', lift_ft: 15 }, { id: 'F2' }])
  })

  it('have no conflict when both said the same', async () => {
    const a = await opened(newClient(), 'P')
    const b = await opened(newClient(), 'P')
    a.edit('P', setLift(12), { label: 'lift' })
    b.edit('P', setLift(12), { label: 'lift' })
    await a.flush()
    await b.flush()
    expect(b.view('P')).toMatchObject({ conflicts: [], unsentCount: 0, sequence: 1 })
  })

  it('have a conflict when the same number is known from different evidence', async () => {
    const a = await opened(newClient(), 'P')
    const b = await opened(newClient(), 'P')
    a.edit('P', setLift(12), { label: 'lift' })
    b.edit('P', { ...setLift(12), evidence: { lift_ft: { mark: 'measured' } } }, { label: 'lift' })
    await a.flush()
    await b.flush()
    expect(b.view('P').conflicts).toHaveLength(1)
  })
})

describe('undo', () => {
  it('sends the inverse, across documents, in one step, and redo does it again', async () => {
    const client = await opened(newClient(), 'P', 'D')
    const act = () =>
      client.act(
        [
          { docId: 'D', body: { kind: 'addItem', collection: 'sources', item: { id: 'S2', name: 'Lake', kind: 'lake', point: { lat: 50, lon: 11 } } } },
          { docId: 'P', body: { kind: 'setFields', collection: 'fillSites', id: 'F1', set: { sourceId: 'S2' } } },
        ],
        { label: 'use the lake' },
      )
    expect(act()).toBeUndefined()
    await client.flush()
    const done = [client.view('D').doc, client.view('P').doc]
    expect(client.undoState()).toMatchObject({ canUndo: true, undoLabel: 'use the lake' })
    expect(await client.undo()).toBeUndefined()
    await client.flush()
    expect([server.doc('D'), server.doc('P')]).toEqual([sampleDistrict(), samplePlan()])
    expect(client.undoState()).toMatchObject({ canUndo: false, canRedo: true, redoLabel: 'use the lake' })
    await client.redo()
    await client.flush()
    expect([server.doc('D'), server.doc('P')]).toEqual(done)
  })

  it('does not take away what another has changed since', async () => {
    const a = await opened(newClient({ actor: 'a' }), 'P')
    const b = await opened(newClient({ actor: 'b' }), 'P')
    a.edit('P', setLift(12), { label: 'lift' })
    await a.flush()
    await b.pull('P')
    b.edit('P', setLift(15), { label: 'lift' })
    await b.flush()
    await a.pull('P')
    expect(await a.undo()).toMatchObject({ code: 'undo-overtaken', values: { path: 'fillSites/F1/lift_ft' } })
    expect(liftOf(a.view('P').doc)).toBe(15)
  })

  it('takes back one act alone, whatever was done after it', async () => {
    const client = await opened(newClient(), 'P')
    client.edit('P', { kind: 'removeItem', collection: 'fillSites', id: 'F1' }, { label: 'remove' })
    const removal = client.lastActId()
    client.edit('P', { kind: 'setFields', set: { name: 'Barn' } }, { label: 'name' })
    expect(await client.undo(removal)).toBeUndefined()
    expect(client.view('P').doc).toEqual({ ...samplePlan(), name: 'Barn' })
    expect(await client.undo(removal)).toBeUndefined()
    expect(client.undoState()).toMatchObject({ undoLabel: 'name', redoLabel: 'remove' })
  })

  it('refuses to take back alone what a later act stands on, and keeps it in its turn', async () => {
    const client = await opened(newClient(), 'P')
    client.edit('P', setLift(11), { label: 'eleven' })
    const eleven = client.lastActId()
    client.edit('P', setLift(12), { label: 'twelve' })
    expect(await client.undo(eleven)).toMatchObject({ code: 'undo-overtaken' })
    expect(liftOf(client.view('P').doc)).toBe(12)
    await client.undo()
    await client.undo()
    expect(liftOf(client.view('P').doc)).toBe(10)
  })

  it('takes acts with one merge key back together', async () => {
    const client = await opened(newClient(), 'P')
    for (const lift_ft of [11, 12, 13]) client.edit('P', setLift(lift_ft), { label: 'lift', mergeKey: 'lift F1' })
    await client.undo()
    expect(liftOf(client.view('P').doc)).toBe(10)
    expect(client.undoState().canUndo).toBe(false)
  })

  it('brings back a document that was put away, and takes a new one away', async () => {
    const client = await opened(newClient(), 'P')
    await client.remove('P', { label: 'delete' })
    expect(client.view('P').status).toBe('deleted')
    expect(client.documentList().entries.map(({ id }) => id)).toEqual(['D'])
    await client.undo()
    expect(client.view('P').status).toBe('ready')
    await client.create({ ...samplePlan(), id: 'P2' }, { label: 'copy' })
    expect(client.documentList().entries.map(({ id }) => id)).toEqual(['D', 'P', 'P2'])
    await client.undo()
    expect(server.kept.get('P2')!.isDeleted).toBe(true)
    await client.redo()
    expect(server.kept.get('P2')!.isDeleted).toBe(false)
  })

  it('stops at the making of a district', async () => {
    const client = newClient()
    await client.create({ ...sampleDistrict(), id: 'D2', name: 'North hills' }, { label: 'begin' })
    expect(client.undoState().canUndo).toBe(false)
    await client.open('D2').load()
    client.edit('D2', { kind: 'setFields', set: { name: 'South hills' } }, { label: 'name' })
    while (client.undoState().canUndo) await client.undo()
    await client.undo()
    expect(server.kept.get('D2')!.isDeleted).toBe(false)
    expect(client.view('D2')).toMatchObject({ status: 'ready', doc: { name: 'North hills' } })
  })

  it('lists what was put away and brings it back, in whichever window it was', async () => {
    const client = await opened(newClient(), 'D')
    await client.remove('D', { label: 'put away' })
    const later = newClient()
    expect(putAwayOf(await later.listWithPutAway()).map(({ id }) => id)).toEqual(['D'])
    expect(await later.bringBack('D')).toBeUndefined()
    expect(server.kept.get('D')!.isDeleted).toBe(false)
    expect(putAwayOf(await later.listWithPutAway())).toEqual([])
    await client.bringBack('D')
    expect(client.view('D').status).toBe('ready')
    expect(client.undoState().canUndo).toBe(false)
  })

  it('keeps the step for later when the server is away', async () => {
    const client = await opened(newClient(), 'P')
    await client.remove('P', { label: 'delete' })
    server.isAway = true
    expect(await client.undo()).toMatchObject({ code: 'server-unreachable' })
    server.isAway = false
    expect(await client.undo()).toBeUndefined()
    expect(server.kept.get('P')!.isDeleted).toBe(false)
  })
})

describe('an edit the server will not have', () => {
  it('goes, with what was built on it, and is said until dismissed', async () => {
    const client = await opened(newClient(), 'P')
    const take = server.take.bind(server)
    server.take = (edit) => (edit.body.kind === 'addItem' ? { kind: 'refused', issue: { code: 'edit-list-full', severity: 'block', subjectIds: [], values: {} } } : take(edit))
    client.edit('P', { kind: 'addItem', collection: 'fillSites', item: { id: 'F3', name: 'New', point: { lat: 50, lon: 11 } } }, { label: 'add' })
    client.edit('P', { kind: 'setFields', collection: 'fillSites', id: 'F3', set: { lift_ft: 4 } }, { label: 'lift' })
    await client.flush()
    expect(client.view('P').doc).toEqual(samplePlan())
    expect(client.undoState().canUndo).toBe(false)
    const { state, refusals } = client.saveState()
    expect(state).toBe('refused')
    expect(refusals.map(({ label }) => label)).toContain('add')
    for (const { id } of refusals) client.dismissRefusal(id)
    expect(client.saveState().state).toBe('saved')
  })
})

describe('the list', () => {
  const counted = () => {
    const transport = server.transport()
    const asked = { count: 0 }
    const client = new Client({ transport: { ...transport, list: (options) => { asked.count++; return transport.list(options) } }, timers, now: () => '2026-01-01T00:00:00Z' })
    return { client, asked }
  }

  it('is asked for once by parts of a screen that open together, and anew by one that opens later', async () => {
    const { client, asked } = counted()
    await Promise.all([client.openList(), client.openList()])
    expect(asked.count).toBe(1)
    expect(client.documentList().status).toBe('ready')
    await client.openList()
    expect(asked.count).toBe(2)
  })

  it('is asked for anew after a change, even while a screen waits for it', async () => {
    const { client, asked } = counted()
    const opening = client.openList()
    await client.create({ ...samplePlan(), id: 'P2' }, { label: 'new' })
    await opening
    expect(asked.count).toBe(2)
    expect(client.documentList().entries.map(({ id }) => id)).toEqual(['D', 'P', 'P2'])
  })
})
