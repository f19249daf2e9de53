import { openDB, type DBSchema } from 'idb'
import type { DocumentEntry, LoadedDocument } from './transport'

/** A document as this device last had it from the server. */
export type Shelved = LoadedDocument & { keptAt: string }

/** Documents that this device has seen, for when the server is away. Only ever what the server had; unsent edits lie in the outbox. */
export type Shelf = {
  find(docId: string): Promise<Shelved | undefined>
  all(): Promise<readonly Shelved[]>
  keep(loaded: LoadedDocument): Promise<void>
  forget(docIds: readonly string[]): Promise<void>
  /** The list of documents as it last came; undefined before that. */
  list(): Promise<readonly DocumentEntry[] | undefined>
  keepList(entries: readonly DocumentEntry[]): Promise<void>
}

export function memoryShelf(now = () => new Date().toISOString()): Shelf {
  const kept = new Map<string, Shelved>()
  let list: readonly DocumentEntry[] | undefined
  return {
    find: async (docId) => kept.get(docId),
    all: async () => [...kept.values()],
    keep: async (loaded) => void kept.set(loaded.doc.id, { ...loaded, keptAt: now() }),
    forget: async (docIds) => docIds.forEach((id) => kept.delete(id)),
    list: async () => list,
    keepList: async (entries) => void (list = entries),
  }
}

type Schema = DBSchema & {
  documents: { key: string; value: Shelved & { docId: string } }
  lists: { key: string; value: readonly DocumentEntry[] }
}

/** The shelf on the device's own disk; in memory where the browser keeps nothing for the page. */
export function indexedShelf(name = 'millrace-shelf'): Shelf {
  const fallback = memoryShelf()
  if (typeof indexedDB === 'undefined') return fallback
  const opened = openDB<Schema>(name, 1, {
    upgrade(db) {
      db.createObjectStore('documents', { keyPath: 'docId' })
      db.createObjectStore('lists')
    },
  }).catch(() => undefined)
  return {
    async find(docId) {
      const db = await opened
      return db ? db.get('documents', docId) : fallback.find(docId)
    },
    async all() {
      const db = await opened
      return db ? db.getAll('documents') : fallback.all()
    },
    async keep(loaded) {
      const db = await opened
      if (!db) return fallback.keep(loaded)
      await db.put('documents', { ...loaded, docId: loaded.doc.id, keptAt: new Date().toISOString() })
    },
    async forget(docIds) {
      const db = await opened
      if (!db) return fallback.forget(docIds)
      const { store, done } = db.transaction('documents', 'readwrite')
      for (const id of docIds) await store.delete(id)
      await done
    },
    async list() {
      const db = await opened
      return db ? db.get('lists', 'documents') : fallback.list()
    },
    async keepList(entries) {
      const db = await opened
      if (!db) return fallback.keepList(entries)
      await db.put('lists', entries, 'documents')
    },
  }
}
