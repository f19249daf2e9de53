import { openDB, type DBSchema } from 'idb'
import { memoryOutbox, type Outbox } from './outbox'
import type { Unsent } from './replica'

type Schema = DBSchema & { unsent: { key: number; value: Unsent & { editId: string; docId: string }; indexes: { docId: string; editId: string } } }

/** The outbox on the device's own disk; in memory where the browser keeps nothing for the page. */
export function indexedOutbox(name = 'millrace-outbox'): Outbox {
  if (typeof indexedDB === 'undefined') return memoryOutbox()
  const fallback = memoryOutbox()
  const opened = openDB<Schema>(name, 1, {
    upgrade(db) {
      const store = db.createObjectStore('unsent', { autoIncrement: true })
      store.createIndex('docId', 'docId')
      store.createIndex('editId', 'editId', { unique: true })
    },
  }).catch(() => undefined)
  return {
    async docIds() {
      const db = await opened
      return db ? [...new Set((await db.getAll('unsent')).map(({ docId }) => docId))] : fallback.docIds()
    },
    async unsentOf(docId) {
      const db = await opened
      return db ? db.getAllFromIndex('unsent', 'docId', docId) : fallback.unsentOf(docId)
    },
    async keep(unsent) {
      const db = await opened
      if (!db) return fallback.keep(unsent)
      const { store, done } = db.transaction('unsent', 'readwrite')
      for (const item of unsent) {
        const key = await store.index('editId').getKey(item.edit.id)
        await store.put({ ...item, editId: item.edit.id, docId: item.edit.docId }, key)
      }
      await done
    },
    async forget(editIds) {
      const db = await opened
      if (!db) return fallback.forget(editIds)
      const { store, done } = db.transaction('unsent', 'readwrite')
      for (const id of editIds) {
        const key = await store.index('editId').getKey(id)
        if (key !== undefined) await store.delete(key)
      }
      await done
    },
  }
}
