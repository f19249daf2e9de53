import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest'
import { createDocument, getDocument, restore, softDelete } from '@/app/_server/documents'
import { appendEdits } from '@/app/_server/edits'
import { addSiteEvents, listSiteEvents } from '@/app/_server/site-events'
import { district, edit, log, plan, rename, siteEvent } from './support/documents'
import { scratchDatabase, type Scratch } from './support/scratch-database'

let scratch: Scratch
let logId: string
let made = 0
beforeAll(async () => {
  scratch = await scratchDatabase()
  await createDocument(scratch.database, district())
  await createDocument(scratch.database, plan())
})
beforeEach(async () => {
  made += 1
  logId = `L${made}`
  await createDocument(scratch.database, log(logId))
})
afterAll(() => scratch.remove())

/** Each test has its own numbers, as ids are of the whole database. */
const one = (number: number, rest: Parameters<typeof siteEvent>[1] = {}) => siteEvent(made * 1000 + number, { logId, ...rest })
const add = (...numbers: number[]) => addSiteEvents(scratch.database, logId, numbers.map((number) => one(number)))
const listed = async (after = 0) => (await listSiteEvents(scratch.database, logId, after)).events.map(({ id }) => Number(id.slice(-3)))

test('events are kept in the order in which they came, and read from any of them on', async () => {
  expect(await add(3, 1)).toEqual({ added: 2, total: 2 })
  expect(await add(2)).toEqual({ added: 1, total: 3 })
  expect(await listed()).toEqual([3, 1, 2])
  expect(await listSiteEvents(scratch.database, logId, 2)).toEqual({ events: [one(2)], last: 3, total: 3, isDeleted: false })
  expect(await listSiteEvents(scratch.database, logId, 3)).toMatchObject({ events: [], last: 3 })
})

test('an event sent again, alone, with new ones or twice at once, is kept once', async () => {
  await add(1, 2)
  expect(await add(2, 3, 1, 3)).toEqual({ added: 1, total: 3 })
  expect(await listed()).toEqual([1, 2, 3])
})

test('the same events sent at the same time by two phones are kept once', async () => {
  await Promise.all([add(1, 2, 3), add(3, 2, 1), add(2, 4)])
  expect((await listed()).sort()).toEqual([1, 2, 3, 4])
})

test('another event under an id that is taken is refused, and nothing that came with it is kept', async () => {
  await add(1)
  await expect(addSiteEvents(scratch.database, logId, [one(2), one(1, { kind: 'left' })])).rejects.toMatchObject({ code: 'event-id-taken', status: 409 })
  expect(await listed()).toEqual([1])
})

test('events of another log, for a plan or for nothing at all are refused', async () => {
  await expect(addSiteEvents(scratch.database, logId, [one(1, { logId: 'other' })])).rejects.toMatchObject({ code: 'other-document' })
  await expect(addSiteEvents(scratch.database, 'P1', [one(1, { logId: 'P1' })])).rejects.toMatchObject({ code: 'not-found', status: 404 })
  await expect(addSiteEvents(scratch.database, 'none', [one(1, { logId: 'none' })])).rejects.toMatchObject({ code: 'not-found' })
})

test('a deleted log takes none and loses none; brought back it takes them', async () => {
  await add(1)
  await softDelete(scratch.database, logId)
  await expect(add(2)).rejects.toMatchObject({ code: 'deleted', status: 410 })
  expect(await listSiteEvents(scratch.database, logId, 0)).toMatchObject({ events: [one(1)], isDeleted: true })
  await restore(scratch.database, logId)
  expect(await add(2)).toEqual({ added: 1, total: 2 })
})

test('no event is ever changed or removed, whoever asks', async () => {
  await add(1)
  await expect(scratch.database.siteEvent.update({ where: { id: one(1).id }, data: { body: '{}' } })).rejects.toThrow()
  await expect(scratch.database.siteEvent.delete({ where: { id: one(1).id } })).rejects.toThrow()
  await expect(scratch.database.$executeRaw`UPDATE "SiteEvent" SET number = 99`).rejects.toThrow(/an event is never changed/)
  expect((await listSiteEvents(scratch.database, logId, 0)).events).toEqual([one(1)])
})

test('the log itself is edited like any document and holds none of its events', async () => {
  await add(1)
  await appendEdits(scratch.database, logId, [edit(`of-${logId}`, 0, rename('Drill at the mill'), logId)])
  expect((await getDocument(scratch.database, logId)).doc).toEqual({ ...log(logId), name: 'Drill at the mill' })
})
