import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { EditBody } from '@/lib/plan'
import { Client } from '@/app/_client/client'
import { FakeServer } from './fake-server'
import { manualTimers } from './manual-timers'
import { samplePlan } from './sample-documents'

const point = fc.record({ lat: fc.integer({ min: 49, max: 51 }), lon: fc.integer({ min: 10, max: 12 }) })
const siteId = fc.constantFrom('F1', 'F2', 'F3', 'F4')
const collection = fc.constantFrom('fillSites', 'dumpSites')

const body: fc.Arbitrary<EditBody> = fc.oneof(
  fc.record({
    kind: fc.constant('addItem' as const), collection,
    item: fc.record({ id: siteId, name: fc.constantFrom('Pond', 'Weir'), point }),
    at: fc.option(fc.nat(3), { nil: undefined }),
  }),
  fc.record({ kind: fc.constant('removeItem' as const), collection, id: siteId }),
  fc.record({ kind: fc.constant('moveSite' as const), collection, id: siteId, point }),
  fc.record({
    kind: fc.constant('setFields' as const), collection: fc.constant('fillSites'), id: siteId,
    set: fc.dictionary(fc.constantFrom('lift_ft', 'bayCount', 'notes'), fc.constantFrom(null, 1, 2), { minKeys: 1, maxKeys: 2 }),
  }),
  fc.record({ kind: fc.constant('setFields' as const), set: fc.record({ name: fc.constantFrom('Barn', 'Mill', 'Farm') }) }),
)

type Step =
  | { who: 0 | 1; does: 'edit'; bodies: EditBody[] }
  | { who: 0 | 1; does: 'flush' | 'pull' | 'undo' | 'redo' | 'reload' }
  | { who: 0 | 1; does: 'resolve'; choice: 'mine' | 'theirs' }
  | { who: 0 | 1; does: 'away' | 'losing'; on: boolean }

const who = fc.constantFrom(0 as const, 1 as const)
const step: fc.Arbitrary<Step> = fc.oneof(
  { weight: 6, arbitrary: fc.record({ who, does: fc.constant('edit' as const), bodies: fc.array(body, { minLength: 1, maxLength: 3 }) }) },
  { weight: 5, arbitrary: fc.record({ who, does: fc.constantFrom('flush' as const, 'pull' as const) }) },
  { weight: 3, arbitrary: fc.record({ who, does: fc.constantFrom('undo' as const, 'redo' as const, 'reload' as const) }) },
  { weight: 1, arbitrary: fc.record({ who, does: fc.constant('resolve' as const), choice: fc.constantFrom('mine' as const, 'theirs' as const) }) },
  { weight: 1, arbitrary: fc.record({ who, does: fc.constantFrom('away' as const, 'losing' as const), on: fc.boolean() }) },
)

async function startClients(server: FakeServer, count: number): Promise<Client[]> {
  server.kept.set('P', { doc: samplePlan(), history: [], isDeleted: false })
  const clients = Array.from({ length: count }, (_, index) => new Client({ transport: server.transport(), timers: manualTimers(), actor: `window ${index}` }))
  for (const client of clients) await client.open('P').load()
  return clients
}

async function take(client: Client, server: FakeServer, taken: Step): Promise<void> {
  switch (taken.does) {
    case 'edit':
      client.edit('P', taken.bodies, { label: 'edit' })
      return
    case 'resolve': {
      const [conflict] = client.view('P').conflicts
      if (conflict) client.resolve('P', conflict.id, taken.choice, { label: 'resolve' })
      return
    }
    case 'away':
      server.isAway = taken.on
      return
    case 'losing':
      server.losesAnswers = taken.on
      return
    case 'reload':
      return client.open('P').load()
    case 'pull':
      return client.pull('P')
    case 'flush':
      return client.flush()
    default:
      await client[taken.does]()
  }
}

/** The item that an edit is about, or the fields of the document itself. */
function placesOf(body: EditBody): readonly string[] {
  if (body.kind === 'setFields' && body.id === undefined) return Object.keys(body.set)
  return [`${body.collection}/${body.kind === 'addItem' ? String(body.item.id) : body.id}`]
}

describe('any interleaving of two windows', () => {
  it('ends with both windows and the server holding the same document, nothing unsent', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(step, { maxLength: 40 }), async (steps) => {
        const server = new FakeServer()
        const clients = await startClients(server, 2)
        for (const taken of steps) await take(clients[taken.who]!, server, taken)
        server.isAway = false
        server.losesAnswers = false
        for (const client of clients) await client.flush()
        for (const client of clients) await client.pull('P')
        for (const client of clients) {
          expect(client.view('P').doc).toEqual(server.doc('P'))
          expect(client.view('P')).toMatchObject({ unsentCount: 0, sequence: server.kept.get('P')!.history.length })
        }
      }),
      { numRuns: 300 },
    )
  })

  it('never applies an edit twice, and loses none without saying so', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(step.filter(({ does }) => does !== 'undo' && does !== 'redo' && does !== 'resolve'), { maxLength: 30 }), async (steps) => {
        const server = new FakeServer()
        const clients = await startClients(server, 2)
        const made: { by: string; body: EditBody }[] = []
        for (const taken of steps) {
          const before = clients[taken.who]!.view('P').unsentCount
          await take(clients[taken.who]!, server, taken)
          if (taken.does === 'edit' && clients[taken.who]!.view('P').unsentCount > before) made.push(...taken.bodies.map((one) => ({ by: `window ${taken.who}`, body: one })))
        }
        server.isAway = false
        server.losesAnswers = false
        for (const client of clients) await client.flush()
        const history = server.kept.get('P')!.history
        expect(new Set(history.map(({ id }) => id)).size).toBe(history.length)
        const saidCount = clients.reduce((sum, client) => {
          const inConflict = client.view('P').conflicts.reduce((count, { mine }) => count + mine.length, 0)
          return sum + inConflict + client.saveState().refusals.length
        }, 0)
        // What is neither kept nor said to be in doubt was the same as what the other window had done to the same place.
        const lostCount = made.length - history.length - saidCount
        const metCount = made.filter(({ by, body: own }) => history.some((other) => other.by !== by && placesOf(own).some((place) => placesOf(other.body).includes(place)))).length
        expect(lostCount).toBeGreaterThanOrEqual(0)
        expect(lostCount).toBeLessThanOrEqual(metCount)
      }),
      { numRuns: 200 },
    )
  })
})

describe('undo', () => {
  it('of all that was done returns the start, and redo of all returns the end', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(fc.tuple(fc.array(body, { minLength: 1, maxLength: 3 }), fc.boolean()), { maxLength: 15 }), async (acts) => {
        const server = new FakeServer()
        const [client] = await startClients(server, 1)
        for (const [bodies, isSent] of acts) {
          client!.edit('P', bodies, { label: 'edit' })
          if (isSent) await client!.flush()
        }
        const end = client!.view('P').doc
        while (client!.undoState().canUndo) expect(await client!.undo()).toBeUndefined()
        expect(client!.view('P').doc).toEqual(samplePlan())
        while (client!.undoState().canRedo) expect(await client!.redo()).toBeUndefined()
        expect(client!.view('P').doc).toEqual(end)
        await client!.flush()
        expect(server.doc('P')).toEqual(end)
      }),
      { numRuns: 200 },
    )
  })

  it('by one window leaves every place the other changed since as the other left it', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(body, { minLength: 1, maxLength: 6 }), fc.integer({ min: 3, max: 9 }), async (bodies, lift_ft) => {
        const server = new FakeServer()
        const [a, b] = await startClients(server, 2)
        for (const one of bodies) a!.edit('P', one, { label: 'edit' })
        await a!.flush()
        await b!.pull('P')
        const refused = b!.edit('P', { kind: 'setFields', collection: 'fillSites', id: 'F1', set: { lift_ft } }, { label: 'lift' })
        await b!.flush()
        await a!.pull('P')
        while (a!.undoState().canUndo) await a!.undo()
        await a!.flush()
        const site = (server.doc('P').fillSites as { id: string; lift_ft?: number }[]).find(({ id }) => id === 'F1')
        if (!refused) expect(site?.lift_ft).toBe(lift_ft)
      }),
      { numRuns: 200 },
    )
  })
})
