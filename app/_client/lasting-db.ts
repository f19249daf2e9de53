import { openDB, type DBSchema, type IDBPDatabase, type OpenDBCallbacks } from 'idb'

/** On the disk itself before it counts as kept, not only with the system: a phone may die in the next second. */
export const STRICT = { durability: 'strict' } as const

/** Why something to be kept is not. */
export const keepsNothing = (): Error => new Error('this browser keeps nothing for the page')

/**
 * A database on the device's own disk, opened when it is first asked for, and again when the connection is gone: closed here for a
 * newer window, or by the browser while the page slept.
 *
 * @returns opens it; undefined where it cannot be
 */
export function lastingDb<S extends DBSchema>(name: string, version: number, upgrade: NonNullable<OpenDBCallbacks<S>['upgrade']>): () => Promise<IDBPDatabase<S> | undefined> {
  let opened: Promise<IDBPDatabase<S>> | undefined
  const lost = () => { opened = undefined }
  const open = () => openDB<S>(name, version, {
    upgrade,
    // A window of the next version waits for this one to let go; nothing is lost by it.
    blocking: (_from, _to, event) => {
      (event.target as IDBDatabase | null)?.close()
      lost()
    },
    terminated: lost,
  })
  return () => (opened ??= open()).catch(() => undefined)
}
