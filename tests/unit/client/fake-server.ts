import { issue } from '@/lib/issue'
import { applyEdit, documentKindOf, pathsOverlap, type Edit, type EditableDocument } from '@/lib/plan'
import { Unreachable, type SequencedEdit, type Transport } from '@/app/_client/transport'

type Kept = { doc: EditableDocument; history: SequencedEdit[]; isDeleted: boolean }

/** A server in memory with the one rule: an edit is taken unless another, made since its base, touched the same place. */
export class FakeServer {
  readonly kept = new Map<string, Kept>()
  /** While true no call gets through. */
  isAway = false
  /** While true calls get through, and their answers are lost. */
  losesAnswers = false
  sent: string[] = []
  requestCount = 0
  /** The item with this id is against a rule that the device does not know. */
  refusesId: string | undefined
  /** After so many requests with edits no call gets through. */
  goesAwayAfter = Infinity

  doc(docId: string): EditableDocument {
    const kept = this.kept.get(docId)
    if (!kept) throw new RangeError(`no document ${docId}`)
    return kept.doc
  }

  /** All edits of a request, or none of them. */
  takeAll(edits: readonly Edit[]): Awaited<ReturnType<Transport['send']>> {
    const kept = this.kept.get(edits[0]!.docId)
    const before = kept && { doc: kept.doc, history: [...kept.history] }
    const base = Math.min(...edits.map((edit) => edit.base))
    for (const edit of edits) {
      const answer = this.take(edit, new Set(edits.map(({ id }) => id)))
      if (answer.kind === 'applied') continue
      if (before) Object.assign(kept, before)
      return answer.kind === 'overlap' ? { kind: 'overlap', history: before!.history.slice(base) } : answer
    }
    return { kind: 'applied', history: kept!.history.slice(base) }
  }

  /** @param together edits sent with it: they do not overlap with each other */
  take(edit: Edit, together: ReadonlySet<string> = new Set()): Awaited<ReturnType<Transport['send']>> {
    const kept = this.kept.get(edit.docId)
    if (!kept) return { kind: 'refused', issue: issue('document-missing', 'block', [edit.docId]) }
    if (edit.body.kind === 'addItem' && edit.body.item.id === this.refusesId) return { kind: 'refused', issue: issue('server-refused', 'block', [edit.docId]) }
    const since = kept.history.slice(edit.base)
    if (kept.history.some(({ id }) => id === edit.id)) return { kind: 'applied', history: since }
    const history = since.filter(({ id }) => !together.has(id))
    const applied = applyEdit(kept.doc, edit.body)
    const touches = 'code' in applied ? touchesOf(edit) : applied.touches
    const isOverlap = history.some((entry) => entry.touches.some((a) => touches.some((b) => pathsOverlap(a, b))))
    if (isOverlap) return { kind: 'overlap', history }
    if ('code' in applied) return { kind: 'refused', issue: applied }
    kept.doc = applied.doc
    const entry = { id: edit.id, sequence: kept.history.length + 1, body: edit.body, touches, by: edit.by, at: edit.at }
    kept.history.push(entry)
    return { kind: 'applied', history: [...since, entry] }
  }

  transport(): Transport {
    const answer = async <T>(make: () => T): Promise<T> => {
      if (this.isAway) throw new Unreachable()
      const made = make()
      if (this.losesAnswers) throw new Unreachable()
      return structuredClone(made)
    }
    return {
      list: ({ withDeleted = false } = {}) =>
        answer(() =>
          [...this.kept.values()]
            .filter(({ isDeleted }) => withDeleted || !isDeleted)
            .map(({ doc, history, isDeleted }) => ({
              id: doc.id, kind: documentKindOf(doc), name: String(doc.name), sequence: history.length,
              ...(typeof doc.districtId === 'string' && { districtId: doc.districtId }), ...(isDeleted && { deletedAt: '2026-01-01T00:00:00Z' }),
            })),
        ),
      load: (docId) =>
        answer(() => {
          const kept = this.kept.get(docId)
          return kept ? { doc: kept.doc, sequence: kept.history.length, isDeleted: kept.isDeleted } : issue('document-missing', 'block', [docId])
        }),
      create: (doc) =>
        answer(() => {
          if (!this.kept.has(doc.id)) this.kept.set(doc.id, { doc, history: [], isDeleted: false })
          return { doc, sequence: 0, isDeleted: false }
        }),
      send: (edits) => answer(() => {
        this.requestCount += 1
        this.isAway = this.isAway || this.requestCount >= this.goesAwayAfter
        this.sent.push(...edits.map(({ id }) => id))
        return this.takeAll(edits)
      }),
      since: (docId, sequence) =>
        answer(() => {
          const kept = this.kept.get(docId)
          return { history: kept?.history.slice(sequence) ?? [], isDeleted: kept?.isDeleted ?? true }
        }),
      remove: (docId) => answer(() => void (this.kept.get(docId)!.isDeleted = true)),
      restore: (docId) => answer(() => void (this.kept.get(docId)!.isDeleted = false)),
      sendLast: (_docId, edits) => {
        if (!this.isAway) for (const edit of edits) this.take(edit)
      },
    }
  }
}

/** Where an edit that does not apply was meant to go. */
function touchesOf({ body }: Edit): string[] {
  if (body.kind === 'addItem') return [`${body.collection}/${body.item.id}`]
  if (body.kind === 'setFields') return Object.keys(body.set).map((field) => (body.collection ? `${body.collection}/${body.id}/${field}` : field))
  return [body.kind === 'moveSite' ? `${body.collection}/${body.id}/point` : `${body.collection}/${body.id}`]
}
