import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { checkedDocument, createDocument, findDocument, getDocument, listDocuments, restore, softDelete } from '@/app/_server/documents'
import { Refusal } from '@/app/_server/refusal'
import { openDatabase } from '@/app/_server/open-database'
import { district, plan } from './support/documents'
import { scratchDatabase, type Scratch } from './support/scratch-database'

let scratch: Scratch
beforeAll(async () => {
  scratch = await scratchDatabase()
})
afterAll(() => scratch.remove())

const codeOf = (work: Promise<unknown>): Promise<unknown> => work.then(() => 'done', (error: unknown) => (error instanceof Refusal ? error.code : error))

test('a saved document comes back as it was, from a database opened afresh', async () => {
  await createDocument(scratch.database, district())
  await createDocument(scratch.database, plan())
  const again = await openDatabase(scratch.file)
  expect(await getDocument(again, 'D1')).toEqual({ doc: district(), sequence: 0, isDeleted: false })
  expect(await getDocument(again, 'P1')).toEqual({ doc: plan(), sequence: 0, isDeleted: false })
  await again.$disconnect()
})

test('the same document sent twice is kept once; another with its id is refused', async () => {
  expect(await createDocument(scratch.database, district())).toMatchObject({ sequence: 0 })
  expect(await codeOf(createDocument(scratch.database, { ...district(), name: 'Other' }))).toBe('taken')
  expect((await listDocuments(scratch.database, { kind: 'district' })).map(({ name }) => name)).toEqual(['Alder Hollow'])
})

test('a plan needs its district, and a plan is no district', async () => {
  expect(await codeOf(createDocument(scratch.database, plan('P2', 'nowhere')))).toBe('district-missing')
  expect(await codeOf(createDocument(scratch.database, plan('P2', 'P1')))).toBe('district-missing')
  expect(await findDocument(scratch.database, 'P2')).toBeUndefined()
})

test('a deleted document leaves the list, keeps its content and can be brought back', async () => {
  await softDelete(scratch.database, 'P1')
  const ids = async (withDeleted = false) => (await listDocuments(scratch.database, { districtId: 'D1', withDeleted })).map(({ id }) => id)
  expect(await ids()).toEqual([])
  expect(await ids(true)).toEqual(['P1'])
  expect(await getDocument(scratch.database, 'P1')).toMatchObject({ doc: plan(), isDeleted: true })
  await restore(scratch.database, 'P1')
  expect(await ids()).toEqual(['P1'])
})

test('what is not there is said to be not there', async () => {
  expect(await codeOf(getDocument(scratch.database, 'none'))).toBe('not-found')
  expect(await codeOf(softDelete(scratch.database, 'none'))).toBe('not-found')
  expect(await codeOf(restore(scratch.database, 'none'))).toBe('not-found')
})

describe('a document from outside is checked at the door', () => {
  const refusalOf = (given: unknown): Refusal => {
    try {
      checkedDocument(given)
    } catch (error) {
      if (error instanceof Refusal) return error
    }
    throw new RangeError('it was let in')
  }

  test.each([null, 7, 'text', [], {}, { districtId: 'D1' }, { ...district(), lift: 3 }])('%o is refused with a path and a sentence', (given) => {
    const { status, sentence } = refusalOf(given)
    expect(status).toBe(422)
    expect(sentence).toMatch(/^.+\.$/)
  })

  test('the path leads to the field', () => {
    const broken = { ...plan(), fillSites: [{ id: 'F1', name: 'Mill pond', point: { lat: 95, lon: 11 } }] }
    expect(refusalOf(broken).path).toMatch(/fillSites.*lat/)
  })
})
