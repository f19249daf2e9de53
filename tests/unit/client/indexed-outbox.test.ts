import 'fake-indexeddb/auto'
import { openDB } from 'idb'
import { expect, it } from 'vitest'
import { indexedOutbox } from '@/app/_client/indexed-outbox'
import { indexedShelf } from '@/app/_client/shelf'
import type { Unsent } from '@/app/_client/unsent'
import { sampleDistrict, samplePlan } from './sample-documents'

const unsentOf = (id: string, lift_ft: number): Unsent => ({
  edit: { id, docId: 'P', base: 0, by: 'cab', at: '2026-01-01T00:00:00Z', body: { kind: 'setFields', collection: 'fillSites', id: 'F1', set: { lift_ft } } },
  touches: ['fillSites/F1/lift_ft'],
  label: 'lift',
})

it('gives edits back in the order they were made, each once', async () => {
  const outbox = indexedOutbox('order')
  await outbox.keep([unsentOf('z', 1), unsentOf('a', 2)])
  await outbox.keep([unsentOf('z', 1)])
  expect((await indexedOutbox('order').unsentOf('P')).map(({ edit }) => edit.id)).toEqual(['z', 'a'])
  await outbox.forget(['z', 'nothing'])
  expect((await outbox.unsentOf('P')).map(({ edit }) => edit.id)).toEqual(['a'])
})

it('keeps the edits of a version before this one', async () => {
  const old = await openDB('old', 1, {
    upgrade(db) {
      const store = db.createObjectStore('unsent', { autoIncrement: true })
      store.createIndex('docId', 'docId')
      store.createIndex('editId', 'editId', { unique: true })
    },
  })
  await old.put('unsent', { ...unsentOf('e1', 3), editId: 'e1', docId: 'P' })
  old.close()
  const outbox = indexedOutbox('old')
  expect((await outbox.unsentOf('P')).map(({ edit }) => edit.id)).toEqual(['e1'])
  await outbox.keepCreated({ doc: samplePlan(), label: 'copy' })
  expect(await outbox.created()).toMatchObject([{ doc: { id: 'P' }, label: 'copy' }])
  await outbox.forgetCreated('P')
  expect(await outbox.created()).toEqual([])
})

it('holds conflicts until they are settled, and counts their document as one with something to do', async () => {
  const outbox = indexedOutbox('conflicts')
  const conflict = { id: 'c', docId: 'P', label: 'lift', by: 'desk', at: '', values: [{ path: 'name', mine: 'a', theirs: 'b' }], mine: [], theirs: [] }
  await outbox.keepConflicts('P', [conflict])
  expect(await outbox.conflictsOf('P')).toEqual([conflict])
  expect(await outbox.docIds()).toEqual(['P'])
  await outbox.keepConflicts('P', [])
  expect(await outbox.docIds()).toEqual([])
})

it('shelves documents and the list', async () => {
  const shelf = indexedShelf('shelf')
  expect(await shelf.list()).toBeUndefined()
  await shelf.keep({ doc: sampleDistrict(), sequence: 4, isDeleted: false })
  await shelf.keepList([{ id: 'D', kind: 'district', name: 'Alder Hollow', sequence: 4 }])
  const again = indexedShelf('shelf')
  expect(await again.find('D')).toMatchObject({ sequence: 4, doc: { name: 'Alder Hollow' } })
  expect(await again.list()).toHaveLength(1)
  await again.forget(['D'])
  expect(await again.all()).toEqual([])
})
