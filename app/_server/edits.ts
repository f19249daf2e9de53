import { valueAtPath } from '@/app/_client/path-value'
import type { SequencedEdit } from '@/app/_client/transport'
import type { Issue } from '@/lib/issue'
import { applyEdit, pathsOverlap, type Edit, type EditableDocument, type EditBody } from '@/lib/plan'
import { docOf, writeDocument, type Rows } from './documents'
import { tellChanged } from './live/changes'
import type { Database } from './open-database'
import { refusal, refusalOfIssue } from './refusal'

/** Two people set the same thing: what the sent edit would make of it, and what stands there now. */
export type Overlap = { editId: string; path: string; mine: unknown; theirs: unknown }

export type Appended = { sequence: number; history: SequencedEdit[] }

/** How an edit changes a document; the document's own rules unless a test brings others. */
export type Apply = (doc: EditableDocument, body: EditBody) => { doc: EditableDocument; inverse: EditBody; touches: string[] } | Issue

const PAGE = 2000

type EditRow = { id: string; docId: string; sequence: number; body: string; inverse: string; touches: string; by: string; at: Date }

const sequencedFrom = (row: EditRow): SequencedEdit => ({
  id: row.id,
  sequence: row.sequence,
  body: JSON.parse(row.body) as EditBody,
  touches: JSON.parse(row.touches) as string[],
  by: row.by,
  at: row.at.toISOString(),
})

/** Edits of a document after a sequence number, in order; at most a page, so ask again from the last one. */
export async function listEdits(rows: Rows, docId: string, after: number): Promise<SequencedEdit[]> {
  const found = await rows.edit.findMany({ where: { docId, sequence: { gt: after } }, orderBy: { sequence: 'asc' }, take: PAGE })
  return found.map(sequencedFrom)
}

/**
 * Puts edits at the end of a document's history, all of them or none.
 *
 * An edit that is already there counts as done. One made on an older state is laid on the newest,
 * unless an edit in between touched the same path: then both values come back and nothing is kept.
 *
 * @param sent  in the order they were made; each names the state it was made on as `base`
 * @param force true: lay them on the newest state even where paths overlap
 * @returns the document's new sequence number, and the history after the oldest base
 * @throws Refusal if the document is not there or deleted, an edit does not apply, or paths overlap
 */
export async function appendEdits(database: Database, docId: string, sent: readonly Edit[], { force = false, apply = applyEdit as Apply } = {}): Promise<Appended> {
  const appended = await database.$transaction(async (rows) => {
    const row = await rows.document.findUnique({ where: { id: docId } })
    if (!row) throw refusal('not-found', { thing: 'document' }, 'id')
    if (row.deletedAt) throw refusal('deleted', {}, 'id')
    const start = { doc: docOf(row), sequence: row.sequence }
    const base = Math.min(...sent.map((edit) => edit.base), start.sequence)
    const later = await rows.edit.findMany({ where: { docId, sequence: { gt: base } }, orderBy: { sequence: 'asc' } })
    const known = await findKnown(rows, docId, sent)
    const foreign = later.filter(({ id }) => !known.has(id))
    const fresh = dropKnown(sent, docId, known)

    let { doc, sequence } = start
    const made: (EditRow & { kind: string })[] = []
    for (const edit of fresh) {
      if (edit.base > start.sequence) throw refusal('base-ahead', {}, 'base')
      const since = foreign.filter((other) => other.sequence > edit.base)
      const applied = apply(doc, edit.body)
      if ('code' in applied) throw refusedOrOverlap(apply, start.doc, later, edit, since, applied, docId)
      const overlaps = force ? [] : overlapsOf(edit, applied, doc, since)
      if (overlaps.length > 0) throw overlapRefusal(overlaps, later)
      doc = applied.doc
      sequence += 1
      const data = { id: edit.id, docId, sequence, kind: edit.body.kind, by: edit.by, at: new Date(edit.at) }
      const texts = { body: JSON.stringify(edit.body), inverse: JSON.stringify(applied.inverse), touches: JSON.stringify(applied.touches) }
      made.push({ ...data, ...texts })
    }
    if (made.length > 0) {
      await rows.edit.createMany({ data: made })
      await writeDocument(rows, doc, sequence)
    }
    return { sequence, history: await listEdits(rows, docId, base) }
  })
  tellChanged(`document:${docId}`)
  return appended
}

async function findKnown(rows: Rows, docId: string, sent: readonly Edit[]): Promise<ReadonlySet<string>> {
  const found = await rows.edit.findMany({ where: { id: { in: sent.map(({ id }) => id) } }, select: { id: true, docId: true } })
  const elsewhere = found.find((row) => row.docId !== docId)
  if (elsewhere) throw refusal('edit-id-taken', { id: elsewhere.id }, 'id')
  return new Set(found.map(({ id }) => id))
}

function dropKnown(sent: readonly Edit[], docId: string, known: ReadonlySet<string>): Edit[] {
  const seen = new Set(known)
  return sent.filter((edit) => {
    if (edit.docId !== docId) throw refusal('other-document', {}, 'docId')
    const isNew = !seen.has(edit.id)
    seen.add(edit.id)
    return isNew
  })
}

const touchesOf = (row: EditRow): string[] => JSON.parse(row.touches) as string[]

function overlapsOf(edit: Edit, applied: { doc: EditableDocument; touches: string[] }, now: EditableDocument, since: readonly EditRow[]): Overlap[] {
  const theirs = since.flatMap(touchesOf)
  return applied.touches
    .filter((path) => theirs.some((other) => pathsOverlap(path, other)))
    .map((path) => ({ editId: edit.id, path, mine: valueAtPath(applied.doc, path) ?? null, theirs: valueAtPath(now, path) ?? null }))
}

const overlapRefusal = (overlaps: readonly Overlap[], later: readonly EditRow[]) =>
  refusal('overlap', {}, overlaps[0]?.path ?? '', { overlaps, history: later.slice(0, PAGE).map(sequencedFrom) })

/**
 * An edit that no longer applies is an overlap if it did apply to the state it was made on and an
 * edit since then touched the same: the item it speaks of was taken away, say.
 */
function refusedOrOverlap(apply: Apply, now: EditableDocument, later: readonly EditRow[], edit: Edit, since: readonly EditRow[], issue: Issue, docId: string) {
  const undone = later.filter(({ sequence }) => sequence > edit.base).reverse()
  let before = now
  for (const row of undone) {
    const back = apply(before, JSON.parse(row.inverse) as EditBody)
    if ('code' in back) throw new Error(`the inverse of edit ${row.id} of ${docId} does not apply: ${back.code}`)
    before = back.doc
  }
  const then = apply(before, edit.body)
  if ('code' in then) return refusalOfIssue(issue)
  const overlaps = overlapsOf(edit, then, now, since)
  return overlaps.length > 0 ? overlapRefusal(overlaps, later) : refusalOfIssue(issue)
}
