import type { DBSchema } from 'idb'
import type { Conflict } from './conflict'
import { keepsNothing, lastingDb, STRICT } from './lasting-db'
import { memoryOutbox, type Created, type Outbox } from './outbox'
import type { Unsent } from './unsent'

type Schema = DBSchema & {
  unsent: { key: number; value: Unsent & { editId: string; docId: string }; indexes: { docId: string; editId: string } }
  created: { key: number; value: Created & { docId: string }; indexes: { docId: string } }
  conflicts: { key: string; value: { docId: string; open: readonly Conflict[] } }
}

const open = (name: string) => lastingDb<Schema>(name, 2, (db, from) => {
  if (from < 1) {
    const unsent = db.createObjectStore('unsent', { autoIncrement: true })
    unsent.createIndex('docId', 'docId')
    unsent.createIndex('editId', 'editId', { unique: true })
  }
  db.createObjectStore('created', { autoIncrement: true }).createIndex('docId', 'docId', { unique: true })
  db.createObjectStore('conflicts', { keyPath: 'docId' })
})

/**
 * The outbox on the device's own disk. Where the browser keeps nothing for the page, it works from
 * memory and what is to be kept rejects, so that the user hears of it.
 */
export function indexedOutbox(name = 'millrace-outbox'): Outbox {
  const fallback = unlasting(memoryOutbox())
  if (typeof indexedDB === 'undefined') return fallback
  const begin = open(name)
  return {
    async docIds() {
      const db = await begin()
      if (!db) return fallback.docIds()
      const [unsent, conflicts] = [await db.getAll('unsent'), await db.getAllKeys('conflicts')]
      return [...new Set([...unsent.map(({ docId }) => docId), ...conflicts])]
    },
    async unsentOf(docId) {
      const db = await begin()
      return db ? db.getAllFromIndex('unsent', 'docId', docId) : fallback.unsentOf(docId)
    },
    async keep(unsent) {
      const db = await begin()
      if (!db) return fallback.keep(unsent)
      const { store, done } = db.transaction('unsent', 'readwrite', STRICT)
      for (const item of unsent) {
        const key = await store.index('editId').getKey(item.edit.id)
        await store.put({ ...item, editId: item.edit.id, docId: item.edit.docId }, key)
      }
      await done
    },
    async forget(editIds) {
      const db = await begin()
      if (!db) return fallback.forget(editIds)
      const { store, done } = db.transaction('unsent', 'readwrite')
      for (const id of editIds) {
        const key = await store.index('editId').getKey(id)
        if (key !== undefined) await store.delete(key)
      }
      await done
    },
    async created() {
      const db = await begin()
      return db ? db.getAll('created') : fallback.created()
    },
    async keepCreated(created) {
      const db = await begin()
      if (!db) return fallback.keepCreated(created)
      const { store, done } = db.transaction('created', 'readwrite', STRICT)
      const key = await store.index('docId').getKey(created.doc.id)
      await store.put({ ...created, docId: created.doc.id }, key)
      await done
    },
    async forgetCreated(docId) {
      const db = await begin()
      if (!db) return fallback.forgetCreated(docId)
      const key = await db.getKeyFromIndex('created', 'docId', docId)
      if (key !== undefined) await db.delete('created', key)
    },
    async conflictsOf(docId) {
      const db = await begin()
      return db ? (await db.get('conflicts', docId))?.open ?? [] : fallback.conflictsOf(docId)
    },
    async keepConflicts(docId, conflicts) {
      const db = await begin()
      if (!db) return fallback.keepConflicts(docId, conflicts)
      const { store, done } = db.transaction('conflicts', 'readwrite', STRICT)
      await (conflicts.length > 0 ? store.put({ docId, open: conflicts }) : store.delete(docId))
      await done
    },
  }
}

/** Does what it can, and says of everything to be kept that it will not last. */
function unlasting(outbox: Outbox): Outbox {
  const unkept = async (done: Promise<void>) => {
    await done
    throw keepsNothing()
  }
  return {
    ...outbox,
    keep: (unsent) => unkept(outbox.keep(unsent)),
    keepCreated: (created) => unkept(outbox.keepCreated(created)),
    keepConflicts: (docId, conflicts) => unkept(outbox.keepConflicts(docId, conflicts)),
  }
}
