import type { Issue } from '../../issue'
import type { EditableDocument } from './document-kind'
import type { Applied, MoveSite } from './edit'
import { setFields } from './set-fields'

/** Moves an item to another point on the ground. */
export function moveSite<D extends EditableDocument>(doc: D, edit: MoveSite): Applied<D> | Issue {
  const applied = setFields(doc, { kind: 'setFields', collection: edit.collection, id: edit.id, set: { point: edit.point } })
  if ('code' in applied || applied.inverse.kind !== 'setFields') return applied as Issue
  const point = applied.inverse.set.point as MoveSite['point'] | null
  return point ? { ...applied, inverse: { ...edit, point } } : applied
}
