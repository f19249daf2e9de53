import { applyEdit, type EditableDocument, type EditBody } from '@/lib/plan'
import { overlaps } from './overlaps'
import { valueAtPath } from './path-value'
import type { Unsent } from './unsent'
import type { SequencedEdit } from './transport'

/** Two values for one place: made here, and made elsewhere meanwhile. A person chooses. */
export type Conflict = {
  id: string
  docId: string
  label: string
  /** Who made the other change, and when by their clock. */
  by: string
  at: string
  values: readonly { path: string; mine: unknown; theirs: unknown }[]
  mine: readonly { editId: string; body: EditBody }[]
  theirs: readonly { body: EditBody; inverse: EditBody }[]
}

type Clash = {
  docId: string
  entry: SequencedEdit | undefined
  theirs: Conflict['theirs']
  caught: readonly Unsent[]
  mine: EditableDocument
  confirmed: EditableDocument
  paths: readonly string[]
}

export const conflictOf = ({ docId, entry, theirs, caught, mine, confirmed, paths }: Clash): Conflict => ({
  id: caught[0]?.edit.id ?? docId,
  docId,
  label: caught.at(-1)?.label ?? '',
  by: entry?.by ?? '',
  at: entry?.at ?? '',
  values: paths.map((path) => ({ path, mine: valueAtPath(mine, path), theirs: valueAtPath(confirmed, path) })),
  mine: caught.map(({ edit }) => ({ editId: edit.id, body: edit.body })),
  theirs,
})

/** A further change elsewhere to a place in conflict belongs to that conflict. */
export const grown = (conflicts: readonly Conflict[], touches: readonly string[], theirs: Conflict['theirs'][number]): readonly Conflict[] =>
  conflicts.map((conflict) =>
    overlaps(conflict.values.map(({ path }) => path), touches) ? { ...conflict, theirs: [...conflict.theirs, theirs] } : conflict,
  )

/** The edit came to stand after all: it is in no conflict. */
export function withoutEdit(conflicts: readonly Conflict[], editId: string): readonly Conflict[] {
  if (!conflicts.some(({ mine }) => mine.some((one) => one.editId === editId))) return conflicts
  return conflicts
    .map((conflict) => ({ ...conflict, mine: conflict.mine.filter((one) => one.editId !== editId) }))
    .filter(({ mine }) => mine.length > 0)
}

/** True when the edits apply one after the other. */
export function canApply(doc: EditableDocument, bodies: readonly EditBody[]): boolean {
  let held = doc
  return bodies.every((body) => {
    const applied = applyEdit(held, body)
    if ('code' in applied) return false
    held = applied.doc
    return true
  })
}
