import type { EditableDocument } from '@/lib/plan'
import type { Conflict } from './conflict'
import type { Unsent } from './unsent'

/** A document made here while the server was away. */
export type Created = { doc: EditableDocument; label: string }

/**
 * What this device holds for the server, so that a closed window or a dead battery loses nothing:
 * unsent edits (by edit id; sending one twice is harmless), documents made while the server was away,
 * and both values of what a person has yet to choose between.
 *
 * What is to be kept rejects when the device would not keep it; then it is in this window alone.
 */
export type Outbox = {
  /** Documents that something is kept for. */
  docIds(): Promise<readonly string[]>
  unsentOf(docId: string): Promise<readonly Unsent[]>
  keep(unsent: readonly Unsent[]): Promise<void>
  forget(editIds: readonly string[]): Promise<void>
  /** In the order they were made. */
  created(): Promise<readonly Created[]>
  keepCreated(created: Created): Promise<void>
  forgetCreated(docId: string): Promise<void>
  conflictsOf(docId: string): Promise<readonly Conflict[]>
  /** These, and no others, are open for the document. */
  keepConflicts(docId: string, conflicts: readonly Conflict[]): Promise<void>
}

/** Keeps nothing beyond the window: for tests, and browsers that refuse storage. */
export function memoryOutbox(): Outbox {
  const kept = new Map<string, Unsent>()
  const created = new Map<string, Created>()
  const conflicts = new Map<string, readonly Conflict[]>()
  return {
    docIds: async () => [...new Set([...[...kept.values()].map(({ edit }) => edit.docId), ...conflicts.keys()])],
    unsentOf: async (docId) => [...kept.values()].filter(({ edit }) => edit.docId === docId),
    keep: async (unsent) => unsent.forEach((item) => kept.set(item.edit.id, item)),
    forget: async (editIds) => editIds.forEach((id) => kept.delete(id)),
    created: async () => [...created.values()],
    keepCreated: async (item) => void created.set(item.doc.id, item),
    forgetCreated: async (docId) => void created.delete(docId),
    conflictsOf: async (docId) => conflicts.get(docId) ?? [],
    keepConflicts: async (docId, open) => void (open.length > 0 ? conflicts.set(docId, open) : conflicts.delete(docId)),
  }
}
