import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { createDocument, getDocument, softDelete } from '@/app/_server/documents'
import { appendEdits, listEdits } from '@/app/_server/edits'
import { Refusal } from '@/app/_server/refusal'
import { openDatabase } from '@/app/_server/open-database'
import { applyEdit, type District } from '@/lib/plan'
import { district, edit, rename, setSource } from './support/documents'
import { scratchDatabase, type Scratch } from './support/scratch-database'

let scratch: Scratch
let id: string
let made = 0
beforeAll(async () => {
  scratch = await scratchDatabase()
})
beforeEach(async () => {
  made += 1
  id = `D${made}`
  await createDocument(scratch.database, district(id))
})
afterAll(() => scratch.remove())

const send = (...edits: Parameters<typeof edit>[]) =>
  appendEdits(scratch.database, id, edits.map(([name, base, body]) => edit(`${id}-${name}`, base, body, id)))

const stored = async () => {
  const { doc, sequence } = await getDocument(scratch.database, id)
  return { doc: doc as District, sequence }
}

async function refusalOf(work: Promise<unknown>): Promise<Refusal> {
  const outcome = await work.catch((error: unknown) => error)
  if (outcome instanceof Refusal) return outcome
  throw new Error(`expected a refusal, got ${String(outcome)}`)
}

test('an edit changes the document, moves its number and is kept with its inverse', async () => {
  const { sequence, history } = await send(['a', 0, setSource('S1', { usable_gal: 400_000 })])
  expect(sequence).toBe(1)
  expect(history).toMatchObject([{ id: `edit-${id}-a`, sequence: 1, touches: ['sources/S1/usable_gal'] }])
  const { doc } = await stored()
  expect(doc.sources[0]).toMatchObject({ usable_gal: 400_000 })
  const row = await scratch.database.edit.findUniqueOrThrow({ where: { id: `edit-${id}-a` } })
  const undone = applyEdit(doc, JSON.parse(row.inverse) as Parameters<typeof applyEdit>[1])
  expect('doc' in undone && undone.doc).toEqual(district(id))
})

test('renaming the document renames it in the list', async () => {
  await send(['a', 0, rename('Birch Hollow')])
  expect(await scratch.database.document.findUniqueOrThrow({ where: { id } })).toMatchObject({ name: 'Birch Hollow', sequence: 1 })
})

test('an edit sent again, alone or with new ones, counts once', async () => {
  await send(['a', 0, rename('One')])
  await send(['a', 0, rename('One')])
  const { sequence, history } = await send(['a', 0, rename('One')], ['b', 1, setSource('S1', { usable_gal: 5 })], ['b', 1, setSource('S1', { usable_gal: 5 })])
  expect(sequence).toBe(2)
  expect(history.map((one) => one.id)).toEqual([`edit-${id}-a`, `edit-${id}-b`])
  expect((await listEdits(scratch.database, id, 0)).length).toBe(2)
})

test('edits made on the same state at different places both stand', async () => {
  await send(['a', 0, setSource('S1', { usable_gal: 400_000 })])
  const { sequence, history } = await send(['b', 0, setSource('S2', { inflow_gpm: 900 })])
  expect(sequence).toBe(2)
  expect(history.map((one) => one.sequence)).toEqual([1, 2])
  expect((await stored()).doc.sources).toMatchObject([{ usable_gal: 400_000 }, { inflow_gpm: 900 }])
})

test('different fields of the same item both stand', async () => {
  await send(['a', 0, setSource('S1', { usable_gal: 400_000 })])
  await send(['b', 0, setSource('S1', { deepest_ft: 9 })])
  expect((await stored()).doc.sources[0]).toMatchObject({ usable_gal: 400_000, deepest_ft: 9 })
})

describe('edits that overlap', () => {
  test('bring both values back and change nothing', async () => {
    await send(['a', 0, setSource('S1', { usable_gal: 400_000 })])
    const { code, status, extra } = await refusalOf(send(['b', 0, setSource('S1', { usable_gal: 250_000 })]))
    expect([code, status]).toEqual(['overlap', 409])
    expect(extra.overlaps).toEqual([{ editId: `edit-${id}-b`, path: 'sources/S1/usable_gal', mine: 250_000, theirs: 400_000 }])
    expect(extra.history).toMatchObject([{ id: `edit-${id}-a`, sequence: 1 }])
    expect(await stored()).toMatchObject({ sequence: 1, doc: { sources: [{ usable_gal: 400_000 }, {}] } })
  })

  test('are laid on top when the sender insists', async () => {
    await send(['a', 0, setSource('S1', { usable_gal: 400_000 })])
    await appendEdits(scratch.database, id, [edit(`${id}-b`, 0, setSource('S1', { usable_gal: 250_000 }), id)], { force: true })
    expect((await stored()).doc.sources[0]).toMatchObject({ usable_gal: 250_000 })
  })

  test('keep nothing of the edits sent with them', async () => {
    await send(['a', 0, setSource('S1', { usable_gal: 400_000 })])
    await refusalOf(send(['b', 0, setSource('S2', { inflow_gpm: 900 })], ['c', 0, setSource('S1', { usable_gal: 1 })]))
    expect((await stored()).sequence).toBe(1)
    expect((await listEdits(scratch.database, id, 0)).length).toBe(1)
  })

  test('are found where the item itself was taken away', async () => {
    await send(['a', 0, { kind: 'removeItem', collection: 'sources', id: 'S1' }])
    const { code, extra } = await refusalOf(send(['b', 0, setSource('S1', { usable_gal: 250_000 })]))
    expect(code).toBe('overlap')
    expect(extra.overlaps).toEqual([{ editId: `edit-${id}-b`, path: 'sources/S1/usable_gal', mine: 250_000, theirs: null }])
  })

  test('are not one sender’s own, sent together', async () => {
    const { sequence } = await send(['a', 0, rename('One')], ['b', 0, rename('Two')])
    expect(sequence).toBe(2)
    expect((await stored()).doc.name).toBe('Two')
  })
})

test('an edit that never applied is refused with the document’s own reason', async () => {
  const { code, status, extra } = await refusalOf(send(['a', 0, setSource('S9', { usable_gal: 5 })]))
  expect([code, status]).toEqual(['edit-item-missing', 422])
  expect(extra.issue).toMatchObject({ code: 'edit-item-missing', subjectIds: ['S9'] })
  expect((await stored()).sequence).toBe(0)
})

test('an edit is refused from a state not reached, for another document, with another’s id, or after deletion', async () => {
  expect((await refusalOf(send(['a', 5, rename('X')]))).code).toBe('base-ahead')
  expect((await refusalOf(appendEdits(scratch.database, id, [edit('x', 0, rename('X'), 'D0')]))).code).toBe('other-document')
  await send(['a', 0, rename('X')])
  const other = `${id}-other`
  await createDocument(scratch.database, district(other))
  expect((await refusalOf(appendEdits(scratch.database, other, [edit(`${id}-a`, 0, rename('X'), other)]))).code).toBe('edit-id-taken')
  await softDelete(scratch.database, id)
  expect((await refusalOf(send(['b', 1, rename('Y')]))).code).toBe('deleted')
  expect((await refusalOf(appendEdits(scratch.database, 'none', [edit('y', 0, rename('X'), 'none')]))).code).toBe('not-found')
})

test('many senders at once, from two openings of the file, lose nothing and share no number', async () => {
  const second = await openDatabase(scratch.file)
  const sends = Array.from({ length: 40 }, (_, index) => {
    const database = index % 2 === 0 ? scratch.database : second
    const item = { id: `N${index}`, name: `Pond ${index}`, kind: 'pond', point: { lat: 50, lon: 11 } }
    return appendEdits(database, id, [edit(`${id}-${index}`, 0, { kind: 'addItem', collection: 'sources', item }, id)])
  })
  await Promise.all(sends)
  await second.$disconnect()
  const { doc, sequence } = await stored()
  expect(sequence).toBe(40)
  expect(doc.sources.length).toBe(42)
  expect((await listEdits(scratch.database, id, 0)).map((one) => one.sequence)).toEqual(Array.from({ length: 40 }, (_, index) => index + 1))
})

test('an edit waits for another opening of the file to end its transaction, and later ones are none the worse', async () => {
  const second = await openDatabase(scratch.file)
  let isHeld: () => void = () => undefined
  const held = new Promise<void>((resolve) => (isHeld = resolve))
  const long = second.$transaction(async (rows) => {
    await rows.setting.count()
    isHeld()
    await new Promise((resolve) => setTimeout(resolve, 700))
  })
  await held
  await send(['a', 0, rename('One')])
  await long
  for (let base = 1; base <= 5; base += 1) await send([`b${base}`, base, rename(`Name ${base}`)])
  await second.$disconnect()
  expect((await stored()).sequence).toBe(6)
})

test('an edit once written can be neither changed nor removed, nor the document under it', async () => {
  await send(['a', 0, rename('X')])
  const where = { id: `edit-${id}-a` }
  const before = await scratch.database.edit.findUniqueOrThrow({ where })
  await expect(scratch.database.edit.update({ where, data: { by: 'Someone' } })).rejects.toThrow()
  await expect(scratch.database.edit.delete({ where })).rejects.toThrow()
  await expect(scratch.database.document.delete({ where: { id } })).rejects.toThrow()
  expect(await scratch.database.edit.findUniqueOrThrow({ where })).toEqual(before)
})

test('the document is always what its edits make of it', async () => {
  await send(['a', 0, rename('X')], ['b', 0, { kind: 'removeItem', collection: 'sources', id: 'S2' }], ['c', 0, setSource('S1', { deepest_ft: 7 })])
  const history = await listEdits(scratch.database, id, 0)
  const replayed = history.reduce<ReturnType<typeof district>>((doc, { body }) => {
    const applied = applyEdit(doc, body)
    if ('code' in applied) throw new Error(applied.code)
    return applied.doc
  }, district(id))
  expect((await stored()).doc).toEqual(replayed)
})
