import type { Issue } from '@/lib/issue'
import { applyEdit, type Edit, type EditableDocument, type EditBody } from '@/lib/plan'
import { canApply, conflictOf, grown, withoutEdit, type Conflict } from './conflict'
import { overlaps } from './overlaps'
import { isSameAtPath, valueAtPath } from './path-value'
import type { SequencedEdit } from './transport'
import type { Unsent } from './unsent'

/**
 * One document as this window holds it. `confirmed` is the server's, at `sequence`; `view`
 * is `confirmed` with the unsent edits on top, in order. Never changed in place.
 */
export type Replica = {
  docId: string
  sequence: number
  confirmed: EditableDocument
  view: EditableDocument
  unsent: readonly Unsent[]
  conflicts: readonly Conflict[]
}

export type Received = {
  replica: Replica
  /** Paths that others touched: what was done before and may be undone later is overtaken there. */
  foreignTouches: readonly string[]
  /** Edits made here that did not come to stand: in conflict, refused, or the same as another's. */
  withdrawnIds: readonly string[]
  refused: readonly { unsent: Unsent; issue: Issue }[]
}

export const newReplica = (doc: EditableDocument, sequence: number): Replica => ({
  docId: doc.id,
  sequence,
  confirmed: doc,
  view: doc,
  unsent: [],
  conflicts: [],
})

/** Puts an edit made here on top; its inverse comes back for undo, or the issue why it cannot be. */
export function addUnsent(replica: Replica, edit: Edit, label: string): { replica: Replica; inverse: EditBody; touches: string[] } | Issue {
  const applied = applyEdit(replica.view, edit.body)
  if ('code' in applied) return applied
  const unsent = [...replica.unsent, { edit, touches: applied.touches, label }]
  return { replica: { ...replica, view: applied.doc, unsent }, inverse: applied.inverse, touches: applied.touches }
}

/**
 * Takes the server's history into the replica: edits of others go under the unsent ones,
 * own edits leave the queue. An unsent edit that speaks of what another has changed
 * leaves the queue too and becomes a conflict, unless both say the same.
 *
 * @param history edits in order of sequence; those already held are passed over
 * @throws RangeError when the history leaves a gap, or holds an edit this document cannot take
 */
export function receive(replica: Replica, history: readonly SequencedEdit[]): Received {
  let { confirmed, sequence } = replica
  let unsent = replica.unsent
  let conflicts = replica.conflicts
  const foreignTouches: string[] = []
  const withdrawn: string[] = []
  for (const entry of history) {
    if (entry.sequence <= sequence) continue
    if (entry.sequence !== sequence + 1) throw new RangeError(`sequence is ${entry.sequence}, must be ${sequence + 1}`)
    const applied = applyEdit(confirmed, entry.body)
    if ('code' in applied) throw new RangeError(`edit ${entry.id} is ${applied.code}, must apply to ${replica.docId}`)
    confirmed = applied.doc
    sequence = entry.sequence
    conflicts = withoutEdit(conflicts, entry.id)
    if (unsent.some(({ edit }) => edit.id === entry.id)) {
      unsent = unsent.filter(({ edit }) => edit.id !== entry.id)
      continue
    }
    const theirs = { body: entry.body, inverse: applied.inverse }
    conflicts = grown(conflicts, applied.touches, theirs)
    foreignTouches.push(...applied.touches)
    const caught = unsent.filter(({ touches }) => overlaps(touches, applied.touches))
    if (caught.length === 0) continue
    unsent = unsent.filter((item) => !caught.includes(item))
    withdrawn.push(...caught.map(({ edit }) => edit.id))
    const mine = replica.view
    const paths = [...new Set(caught.flatMap(({ touches }) => touches))].filter((path) => overlaps([path], applied.touches))
    const isAgreed = caught.every(({ touches }) => touches.every((path) => isSameAtPath(mine, confirmed, path)))
    if (!isAgreed) conflicts = [...conflicts, conflictOf({ docId: replica.docId, entry, theirs: [theirs], caught, mine, confirmed, paths })]
  }
  const settled = settle({ ...replica, confirmed, sequence, conflicts, unsent: rebased(unsent, replica.sequence, sequence) })
  return { ...settled, foreignTouches, withdrawnIds: [...withdrawn, ...settled.withdrawnIds] }
}

/** Takes an edit the server will not have out of the queue, and what cannot stand without it. */
export function withdraw(replica: Replica, editId: string): Received {
  const settled = settle({ ...replica, unsent: replica.unsent.filter(({ edit }) => edit.id !== editId) })
  return { ...settled, foreignTouches: [], withdrawnIds: [editId, ...settled.withdrawnIds] }
}

/**
 * Makes a conflict of an unsent edit that the server says overlaps with changes this
 * replica already holds: it was kept from an earlier visit, made on an older document.
 */
export function conflictFromHistory(replica: Replica, editId: string, history: readonly SequencedEdit[]): Received {
  const caught = replica.unsent.filter(({ edit }) => edit.id === editId)
  const others = history.filter((entry) => caught.some(({ touches }) => overlaps(touches, entry.touches)))
  const withdrawn = withdraw(replica, editId)
  const touches = caught.flatMap((item) => item.touches)
  if (touches.every((path) => isSameAtPath(replica.view, withdrawn.replica.view, path))) return withdrawn
  const conflict = conflictOf({ docId: replica.docId, caught, entry: others.at(-1), theirs: [], mine: replica.view, confirmed: replica.confirmed, paths: touches })
  return { ...withdrawn, replica: { ...withdrawn.replica, conflicts: [...withdrawn.replica.conflicts, conflict] } }
}

/** The conflict is settled: it goes, and what is to be done comes back as edit bodies to make afresh. */
export function resolveConflict(replica: Replica, conflictId: string, choice: 'mine' | 'theirs'): { replica: Replica; bodies: readonly EditBody[] } {
  const conflict = replica.conflicts.find(({ id }) => id === conflictId)
  const left = { ...replica, conflicts: replica.conflicts.filter(({ id }) => id !== conflictId) }
  if (!conflict || choice === 'theirs') return { replica: left, bodies: [] }
  const mine = conflict.mine.map(({ body }) => body)
  const back = conflict.theirs.map(({ inverse }) => inverse).reverse()
  return { replica: left, bodies: canApply(replica.view, mine) ? mine : [...back, ...mine] }
}

/** Edits that were checked against all this replica held are now checked against all it holds. */
const rebased = (unsent: readonly Unsent[], from: number, to: number): readonly Unsent[] =>
  unsent.map((item) => (item.edit.base >= from ? { ...item, edit: { ...item.edit, base: to } } : item))

/** Lays the unsent edits on the confirmed document again; what no longer applies leaves the queue. */
function settle(replica: Replica): Pick<Received, 'replica' | 'refused' | 'withdrawnIds'> {
  const refused: { unsent: Unsent; issue: Issue }[] = []
  const unsent: Unsent[] = []
  let view = replica.confirmed
  for (const item of replica.unsent) {
    const applied = applyEdit(view, item.edit.body)
    if ('code' in applied) {
      refused.push({ unsent: item, issue: applied })
      continue
    }
    view = applied.doc
    unsent.push({ ...item, touches: applied.touches })
  }
  const conflicts = replica.conflicts.map((conflict) => ({
    ...conflict,
    values: conflict.values.map((value) => ({ ...value, theirs: valueAtPath(replica.confirmed, value.path) })),
  }))
  return { replica: { ...replica, view, unsent, conflicts }, refused, withdrawnIds: refused.map(({ unsent: { edit } }) => edit.id) }
}
