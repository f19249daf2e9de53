import type { Unsent } from './replica'

/**
 * Where unsent edits are kept until the server has them, so that a closed window or a
 * dead battery loses nothing. Kept by edit id; sending one twice is harmless.
 */
export type Outbox = {
  /** Documents that something is kept for. */
  docIds(): Promise<readonly string[]>
  unsentOf(docId: string): Promise<readonly Unsent[]>
  keep(unsent: readonly Unsent[]): Promise<void>
  forget(editIds: readonly string[]): Promise<void>
}

/** Keeps nothing beyond the window: for tests, and browsers that refuse storage. */
export function memoryOutbox(): Outbox {
  const kept = new Map<string, Unsent>()
  return {
    docIds: async () => [...new Set([...kept.values()].map(({ edit }) => edit.docId))],
    unsentOf: async (docId) => [...kept.values()].filter(({ edit }) => edit.docId === docId),
    keep: async (unsent) => unsent.forEach((item) => kept.set(item.edit.id, item)),
    forget: async (editIds) => editIds.forEach((id) => kept.delete(id)),
  }
}
