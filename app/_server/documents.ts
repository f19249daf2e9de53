import type { DocumentEntry } from '@/app/_client/transport'
import { issuesFromZod, documentKindOf, documentKinds, schemaOf, type DocumentKind, type EditableDocument } from '@/lib/plan'
import { tellChanged } from './live/changes'
import type { Database } from './open-database'
import { refusal, refusalOfIssue } from './refusal'

/** A document as the store holds it, at its newest state. */
export type StoredDocument = { doc: EditableDocument; sequence: number; isDeleted: boolean }

export type DocumentFilter = { kind?: DocumentKind; districtId?: string; withDeleted?: boolean }

/** What reads and writes rows: the database itself, or a transaction of it. */
export type Rows = Pick<Database, 'document' | 'edit'>

/** Text of a document as it is kept. */
export const textOf = (doc: EditableDocument): string => JSON.stringify(doc)

export const docOf = (row: { body: string }): EditableDocument => JSON.parse(row.body) as EditableDocument

const nameOf = (doc: EditableDocument): string => (typeof doc.name === 'string' ? doc.name : '')

/**
 * Checks a document from outside against the schema of its kind.
 *
 * @throws Refusal naming the first thing that is wrong with it
 */
export function checkedDocument(given: unknown): EditableDocument {
  const isObject = typeof given === 'object' && given !== null && !Array.isArray(given)
  const parsed = schemaOf(isObject ? documentKindOf(given as EditableDocument) : 'district').safeParse(given)
  if (parsed.success) return parsed.data as EditableDocument
  const [issue] = issuesFromZod(parsed.error, '', given)
  throw issue ? refusalOfIssue(issue) : refusal('not-json')
}

/** Newest first within a kind; those deleted are left out unless asked for. */
export async function listDocuments(database: Rows, filter: DocumentFilter = {}): Promise<DocumentEntry[]> {
  const rows = await database.document.findMany({
    where: {
      ...(filter.kind && { kind: filter.kind }),
      ...(filter.districtId && { districtId: filter.districtId }),
      ...(!filter.withDeleted && { deletedAt: null }),
    },
    omit: { body: true },
    orderBy: [{ updatedAt: 'desc' }, { id: 'asc' }],
  })
  return rows.map(({ id, kind, name, districtId, sequence, updatedAt, deletedAt }) => ({
    id,
    kind: documentKinds.find((known) => known === kind) ?? 'district',
    name,
    ...(districtId !== null && { districtId }),
    sequence,
    updatedAt: updatedAt.toISOString(),
    ...(deletedAt !== null && { deletedAt: deletedAt.toISOString() }),
  }))
}

export async function findDocument(database: Rows, id: string): Promise<StoredDocument | undefined> {
  const row = await database.document.findUnique({ where: { id } })
  return row ? { doc: docOf(row), sequence: row.sequence, isDeleted: row.deletedAt !== null } : undefined
}

/** @throws Refusal if there is none; a deleted one is still there */
export async function getDocument(database: Rows, id: string): Promise<StoredDocument> {
  const found = await findDocument(database, id)
  if (!found) throw refusal('not-found', { thing: 'document' }, 'id')
  return found
}

/**
 * Keeps a new document. The same one sent twice is kept once.
 *
 * @param doc already checked against its schema
 * @throws Refusal if another document has its id, or it is a plan of a district that is not here
 */
export async function createDocument(database: Database, doc: EditableDocument): Promise<StoredDocument> {
  return database.$transaction(async (rows) => {
    const there = await findDocument(rows, doc.id)
    if (there) {
      if (there.sequence === 0 && textOf(there.doc) === textOf(doc)) return there
      throw refusal('taken', {}, 'id')
    }
    const districtId = typeof doc.districtId === 'string' ? doc.districtId : null
    if (districtId !== null) {
      const district = await rows.document.findUnique({ where: { id: districtId }, omit: { body: true } })
      if (district?.kind !== 'district') throw refusal('district-missing', {}, 'districtId')
    }
    await rows.document.create({ data: { id: doc.id, kind: documentKindOf(doc), districtId, name: nameOf(doc), body: textOf(doc) } })
    return { doc, sequence: 0, isDeleted: false }
  })
}

/** Puts the newest state of a document in the place of the last one. */
export async function writeDocument(rows: Rows, doc: EditableDocument, sequence: number): Promise<void> {
  await rows.document.update({ where: { id: doc.id }, data: { body: textOf(doc), name: nameOf(doc), sequence } })
}

/** Deleted documents leave the lists and take no changes; nothing of them is lost. */
export const softDelete = (database: Rows, id: string): Promise<void> => setDeletedAt(database, id, new Date())

export const restore = (database: Rows, id: string): Promise<void> => setDeletedAt(database, id, null)

async function setDeletedAt(database: Rows, id: string, deletedAt: Date | null): Promise<void> {
  const { count } = await database.document.updateMany({ where: { id }, data: { deletedAt } })
  if (count === 0) throw refusal('not-found', { thing: 'document' }, 'id')
  tellChanged(`document:${id}`)
}
