import type { DBSchema } from 'idb'
import type { SiteEvent } from '@/lib/plan'
import { keepsNothing, lastingDb, STRICT } from '../lasting-db'

/** An event as this device holds it. */
export type KeptEvent = { event: SiteEvent; isSent: boolean }

/** Where the events of logs lie on this device: those made here, and those of others that have come. */
export type EventDisk = {
  eventsOf(logId: string): Promise<readonly KeptEvent[]>
  /** Comes back when they are on the disk; an event that the station has is never made unsent again. */
  keep(events: readonly SiteEvent[], isSent: boolean): Promise<void>
  /** Logs of which something is unsent. */
  unsentLogIds(): Promise<readonly string[]>
  unsentCountOf(logId: string): Promise<number>
  /** Up to which number the station's events of a log are here. */
  cursorOf(logId: string): Promise<number>
  keepCursor(logId: string, after: number): Promise<void>
  /** The station has less than it once had, after an older backup: everything here is to be sent again. */
  sendAgain(logId: string): Promise<void>
}

type Row = KeptEvent & { id: string; logId: string; unsent: 0 | 1 }
type Schema = DBSchema & {
  events: { key: string; value: Row; indexes: { logId: string; unsent: number } }
  cursors: { key: string; value: number }
}

export function memoryEventDisk(): EventDisk {
  const rows = new Map<string, KeptEvent>()
  const cursors = new Map<string, number>()
  const of = (logId: string) => [...rows.values()].filter(({ event }) => event.logId === logId)
  return {
    eventsOf: async (logId) => of(logId),
    keep: async (events, isSent) => { for (const event of events) rows.set(event.id, { event, isSent: isSent || (rows.get(event.id)?.isSent ?? false) }) },
    unsentLogIds: async () => [...new Set([...rows.values()].filter(({ isSent }) => !isSent).map(({ event }) => event.logId))],
    unsentCountOf: async (logId) => of(logId).filter(({ isSent }) => !isSent).length,
    cursorOf: async (logId) => cursors.get(logId) ?? 0,
    keepCursor: async (logId, after) => void cursors.set(logId, after),
    sendAgain: async (logId) => {
      for (const { event } of of(logId)) rows.set(event.id, { event, isSent: false })
      cursors.set(logId, 0)
    },
  }
}

const open = (name: string) => lastingDb<Schema>(name, 1, (db) => {
  const events = db.createObjectStore('events', { keyPath: 'id' })
  events.createIndex('logId', 'logId')
  events.createIndex('unsent', 'unsent')
  db.createObjectStore('cursors')
})

/** The device's own disk. Where the browser keeps nothing for the page, it works from memory and `keep` rejects, so that the user hears of it. */
export function indexedEventDisk(name = 'millrace-events'): EventDisk {
  const fallback = memoryEventDisk()
  const unlasting: EventDisk = {
    ...fallback,
    keep: async (events, isSent) => {
      await fallback.keep(events, isSent)
      if (!isSent) throw keepsNothing()
    },
  }
  if (typeof indexedDB === 'undefined') return unlasting
  const begin = open(name)
  return {
    async eventsOf(logId) {
      const db = await begin()
      return db ? db.getAllFromIndex('events', 'logId', logId) : unlasting.eventsOf(logId)
    },
    async keep(events, isSent) {
      const db = await begin()
      if (!db) return unlasting.keep(events, isSent)
      const { store, done } = db.transaction('events', 'readwrite', STRICT)
      for (const event of events) {
        const sent = isSent || ((await store.get(event.id))?.isSent ?? false)
        await store.put({ id: event.id, logId: event.logId, event, isSent: sent, unsent: sent ? 0 : 1 })
      }
      await done
    },
    async unsentLogIds() {
      const db = await begin()
      if (!db) return unlasting.unsentLogIds()
      return [...new Set((await db.getAllFromIndex('events', 'unsent', 1)).map(({ logId }) => logId))]
    },
    async unsentCountOf(logId) {
      const db = await begin()
      if (!db) return unlasting.unsentCountOf(logId)
      return (await db.getAllFromIndex('events', 'unsent', 1)).filter((row) => row.logId === logId).length
    },
    async cursorOf(logId) {
      const db = await begin()
      return db ? (await db.get('cursors', logId)) ?? 0 : unlasting.cursorOf(logId)
    },
    async keepCursor(logId, after) {
      const db = await begin()
      if (!db) return unlasting.keepCursor(logId, after)
      await db.put('cursors', after, logId)
    },
    async sendAgain(logId) {
      const db = await begin()
      if (!db) return unlasting.sendAgain(logId)
      const all = db.transaction(['events', 'cursors'], 'readwrite', STRICT)
      const events = all.objectStore('events')
      for (const row of await events.index('logId').getAll(logId)) await events.put({ ...row, isSent: false, unsent: 1 })
      await all.objectStore('cursors').put(0, logId)
      await all.done
    },
  }
}
