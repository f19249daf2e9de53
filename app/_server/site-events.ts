import { isDeepStrictEqual } from 'node:util'
import type { SiteEvent } from '@/lib/plan'
import { EVENTS_AT_ONCE, EVENTS_OF_A_LOG } from './limits'
import type { Database } from './open-database'
import { refusal } from './refusal'

/** What reads and writes rows: the database itself, or a transaction of it. */
export type EventRows = Pick<Database, 'document' | 'siteEvent'>

/** Events of a log in the order in which they came, the number of the last of all, and whether the log has been put away. */
export type EventPage = { events: SiteEvent[]; last: number; total: number; isDeleted: boolean }

/** @returns events after a number; at most a page, so ask again from `last` while it is below `total` */
export async function listSiteEvents(rows: EventRows, logId: string, after: number): Promise<EventPage> {
  const log = await getLogRow(rows, logId)
  const found = await rows.siteEvent.findMany({ where: { logId, number: { gt: after } }, orderBy: { number: 'asc' }, take: EVENTS_AT_ONCE })
  return {
    events: found.map(({ body }) => JSON.parse(body) as SiteEvent),
    last: found.at(-1)?.number ?? after,
    total: await rows.siteEvent.count({ where: { logId } }),
    isDeleted: log.deletedAt !== null,
  }
}

/**
 * Adds events to a log, all of them or none. One that is there already counts as done, in whatever order they come.
 *
 * @param sent each checked against its schema
 * @returns how many were new, and how many there are now
 * @throws Refusal if the log is not there or deleted, an event is of another log, or another event has its id
 */
export function addSiteEvents(database: Database, logId: string, sent: readonly SiteEvent[]): Promise<{ added: number; total: number }> {
  return database.$transaction(async (rows) => {
    const log = await getLogRow(rows, logId)
    if (log.deletedAt) throw refusal('deleted', {}, 'id')
    if (sent.some((event) => event.logId !== logId)) throw refusal('other-document', {}, 'logId')
    const there = await rows.siteEvent.findMany({ where: { id: { in: sent.map(({ id }) => id) } }, select: { id: true, body: true } })
    const known = new Map(there.map(({ id, body }) => [id, JSON.parse(body) as SiteEvent]))
    const total = await rows.siteEvent.count({ where: { logId } })
    let number = total
    for (const event of sent) {
      const before = known.get(event.id)
      if (before && isDeepStrictEqual(before, event)) continue
      if (before) throw refusal('event-id-taken', { id: event.id }, 'id')
      known.set(event.id, event)
      number += 1
      if (number > EVENTS_OF_A_LOG) throw refusal('log-full', { most: EVENTS_OF_A_LOG })
      await rows.siteEvent.create({ data: { id: event.id, logId, number, body: JSON.stringify(event) } })
    }
    return { added: number - total, total: number }
  })
}

/** @throws Refusal if there is no log of this id; a deleted one is still there */
async function getLogRow(rows: EventRows, id: string) {
  const row = await rows.document.findUnique({ where: { id }, select: { kind: true, deletedAt: true } })
  if (row?.kind !== 'log') throw refusal('not-found', { thing: 'log' }, 'id')
  return row
}
