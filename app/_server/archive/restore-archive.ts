import { randomUUID } from 'node:crypto'
import { applyEdit, documentKindOf, type EditableDocument } from '@/lib/plan'
import { say } from '@/app/_text'
import '@/app/_text/areas/archive'
import { textOf } from '../documents'
import type { Database } from '../open-database'
import { refusal } from '../refusal'
import type { ArchivedDocument, ArchivedEvent } from './archive-form'
import type { Archive } from './read-archive'

type Transaction = Parameters<Parameters<Database['$transaction']>[0]>[0]

/** `already-here`: all of it was here, at the same state. */
export type Restored = { outcome: 'restored' | 'copied' | 'already-here'; districtId: string; name: string; planCount: number; missing: string[] }

/** Rows written at a time: a statement takes only so many values. */
const ROWS_AT_ONCE = 500

/**
 * Brings an archive into the database, all of it or nothing.
 *
 * @param archive checked by readArchive
 * @param asCopy  true: under new ids, beside whatever is here
 * @throws Refusal if something of it is here at another state, unless as a copy
 */
export function restoreArchive(database: Database, archive: Archive, { asCopy = false, newId = randomUUID as () => string } = {}): Promise<Restored> {
  const given = [archive.district, ...archive.plans]
  const documents = asCopy ? copiesOf(given, newId) : given
  const [district] = documents
  const of = (outcome: Restored['outcome']): Restored => ({
    outcome, districtId: district?.doc.id ?? '', name: String(district?.doc.name ?? ''),
    planCount: documents.filter(({ doc, deletedAt }) => documentKindOf(doc) === 'plan' && !deletedAt).length, missing: archive.manifest.missing.map(({ kind }) => kind),
  })
  return database.$transaction(async (rows) => {
    const isHere = !asCopy && (await findHere(rows, documents))
    if (!isHere) for (const document of documents) await writeWhole(rows, document)
    for (const { hash, kind, size, bytes } of archive.data) {
      if ((await rows.blob.count({ where: { hash } })) === 0) await rows.blob.create({ data: { hash, kind, size, bytes: bytes() }, select: { hash: true } })
    }
    return of(isHere ? 'already-here' : asCopy ? 'copied' : 'restored')
  }, { maxWait: 60_000, timeout: 300_000 })
}

/** True if all of it is here at the same state, false if nothing is. */
async function findHere(rows: Transaction, documents: readonly ArchivedDocument[]): Promise<boolean> {
  const districtId = documents[0]?.doc.id ?? ''
  const here = await rows.document.findMany({ where: { OR: [{ id: { in: documents.map(({ doc }) => doc.id) } }, { districtId }] } })
  if (here.length > 0) {
    const byId = new Map(here.map((row) => [row.id, row]))
    const isSame = here.length === documents.length && documents.every(({ doc, sequence, deletedAt }) => {
      const row = byId.get(doc.id)
      return row?.sequence === sequence && (row.deletedAt !== null) === (deletedAt !== undefined) && row.body === textOf(doc)
    })
    if (isSame && (await hasSameEvents(rows, documents))) return true
    const district = byId.get(districtId)
    throw refusal('archive-here', { name: district?.name ?? String(documents[0]?.doc.name ?? ''), state: district?.deletedAt ? 'deleted' : 'here' })
  }
  const editIds = documents.flatMap(({ edits }) => edits.map(({ id }) => id))
  for (let at = 0; at < editIds.length; at += ROWS_AT_ONCE) {
    const taken = await rows.edit.findFirst({ where: { id: { in: editIds.slice(at, at + ROWS_AT_ONCE) } }, select: { id: true } })
    if (taken) throw refusal('archive-here', { name: String(documents[0]?.doc.name ?? ''), state: 'here' })
  }
  const eventIds = documents.flatMap(({ events = [] }) => events.map(({ event }) => event.id))
  for (let at = 0; at < eventIds.length; at += ROWS_AT_ONCE) {
    const taken = await rows.siteEvent.findFirst({ where: { id: { in: eventIds.slice(at, at + ROWS_AT_ONCE) } }, select: { id: true } })
    if (taken) throw refusal('archive-here', { name: String(documents[0]?.doc.name ?? ''), state: 'here' })
  }
  return false
}

/** Events are never changed, so the same ids in number are the same events. */
async function hasSameEvents(rows: Transaction, documents: readonly ArchivedDocument[]): Promise<boolean> {
  for (const { doc, events = [] } of documents) {
    const here = await rows.siteEvent.findMany({ where: { logId: doc.id }, select: { id: true } })
    const ids = new Set(here.map(({ id }) => id))
    if (ids.size !== events.length || events.some(({ event }) => !ids.has(event.id))) return false
  }
  return true
}

async function writeWhole(rows: Transaction, { doc, sequence, createdAt, updatedAt, deletedAt, edits, events = [] }: ArchivedDocument): Promise<void> {
  const districtId = typeof doc.districtId === 'string' ? doc.districtId : null
  await rows.document.create({
    data: { id: doc.id, kind: documentKindOf(doc), districtId, name: String(doc.name ?? ''), sequence, body: textOf(doc), createdAt, updatedAt, deletedAt: deletedAt ?? null },
  })
  const data = edits.map((edit) => ({
    id: edit.id, docId: doc.id, sequence: edit.sequence, kind: edit.body.kind, by: edit.by, at: edit.at,
    body: JSON.stringify(edit.body), inverse: JSON.stringify(edit.inverse), touches: JSON.stringify(edit.touches),
  }))
  for (let at = 0; at < data.length; at += ROWS_AT_ONCE) await rows.edit.createMany({ data: data.slice(at, at + ROWS_AT_ONCE) })
  const seen = events.map(({ number, event, receivedAt }) => ({ id: event.id, logId: doc.id, number, body: JSON.stringify(event), receivedAt }))
  for (let at = 0; at < seen.length; at += ROWS_AT_ONCE) await rows.siteEvent.createMany({ data: seen.slice(at, at + ROWS_AT_ONCE) })
}

/**
 * The documents under new ids, the district named as a copy by one more edit of its history. Ids inside a document stay:
 * they are looked up within it only.
 */
function copiesOf(documents: readonly ArchivedDocument[], newId: () => string): ArchivedDocument[] {
  const districtId = newId()
  return documents.map((document) => {
    const isDistrict = documentKindOf(document.doc) === 'district'
    const doc: EditableDocument = { ...document.doc, id: isDistrict ? districtId : newId(), ...(!isDistrict && { districtId }) }
    const copy = { ...document, doc, edits: document.edits.map((edit) => ({ ...edit, id: newId() })), ...(document.events && { events: eventCopies(document.events, doc.id, newId) }) }
    return isDistrict ? namedAsCopy(copy, newId) : copy
  })
}

/** Events under new ids, corrections and undos of them too; of one that is not here they go on naming the old. */
function eventCopies(events: readonly ArchivedEvent[], logId: string, newId: () => string): ArchivedEvent[] {
  const ids = new Map(events.map(({ event }) => [event.id, newId()]))
  const idOf = (id: string) => ids.get(id) ?? id
  return events.map((one) => ({
    ...one,
    event: {
      ...one.event, id: idOf(one.event.id), logId,
      ...(one.event.replaces !== undefined && { replaces: idOf(one.event.replaces) }), ...(one.event.retracts !== undefined && { retracts: idOf(one.event.retracts) }),
    },
  }))
}

function namedAsCopy(document: ArchivedDocument, newId: () => string): ArchivedDocument {
  const body = { kind: 'setFields' as const, set: { name: say('archive.copy-name', { name: String(document.doc.name ?? '') }).slice(0, 120) } }
  const applied = applyEdit(document.doc, body)
  if ('code' in applied) return document
  const sequence = document.sequence + 1
  const edit = { id: newId(), sequence, body, inverse: applied.inverse, touches: applied.touches, by: '', at: document.updatedAt }
  return { ...document, doc: applied.doc, sequence, edits: [...document.edits, edit] }
}
