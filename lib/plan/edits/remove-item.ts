import type { Issue } from '../../issue'
import { documentKindOf, type EditableDocument } from './document-kind'
import { findItemSchema } from './document-shape'
import type { Applied, RemoveItem } from './edit'
import { missing, noSuchList } from './refusal'

/**
 * Takes an item out of a list. What refers to it stays and is reported by the checks, so
 * that the inverse brings back everything.
 *
 * @returns the new document and its inverse; an issue when there is no such item
 */
export function removeItem<D extends EditableDocument>(doc: D, edit: RemoveItem): Applied<D> | Issue {
  if (!findItemSchema(documentKindOf(doc), edit.collection)) return noSuchList(edit.collection)
  const list = (doc[edit.collection] ?? []) as { id: string }[]
  const at = list.findIndex(({ id }) => id === edit.id)
  const item = list[at]
  if (!item) return missing(edit.collection, edit.id)
  return {
    doc: { ...doc, [edit.collection]: list.toSpliced(at, 1) },
    inverse: { kind: 'addItem', collection: edit.collection, item, at },
    touches: [`${edit.collection}/${edit.id}`],
  }
}
