import { EventEmitter } from 'node:events'

/** What can change: a document, a grant, or who sits at the seats of an exercise. */
export type Subject = `document:${string}` | `grant:${string}` | `seats:${string}`

// One for the process: kept on the global object, for this module may be loaded more than once.
const held = globalThis as typeof globalThis & { millraceChanges?: EventEmitter }
const changes = (): EventEmitter => (held.millraceChanges ??= new EventEmitter().setMaxListeners(0))

/** Says that something has changed, once it is stored; what it is now is read from the database. */
export const tellChanged = (subject: Subject): void => void changes().emit(subject)

/** Hears of every change of a subject from now on. @returns how to stop */
export function onChanged(subject: Subject, listener: () => void): () => void {
  changes().on(subject, listener)
  return () => void changes().off(subject, listener)
}
