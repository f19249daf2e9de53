import { issue, type Issue } from '../../issue'
import type { AddItem, Applied } from './edit'
import { documentKindOf, type EditableDocument } from './document-kind'
import { findItemSchema } from './document-shape'
import { invalid, noSuchList } from './refusal'

/**
 * Adds an item to a list of the document. Adding an item that is already there, the same
 * id and list, puts the given one in its place: sent twice, it does the same once.
 *
 * @returns the new document and its inverse; an issue when the list or the item is not one of the document's
 */
export function addItem<D extends EditableDocument>(doc: D, edit: AddItem): Applied<D> | Issue {
  const schema = findItemSchema(documentKindOf(doc), edit.collection)
  if (!schema) return noSuchList(edit.collection)
  const parsed = schema.safeParse(edit.item)
  if (!parsed.success) return invalid(parsed.error, `${edit.collection} ${edit.item.id}`, edit.item.id)
  const list = (doc[edit.collection] ?? []) as { id: string }[]
  const there = list.findIndex(({ id }) => id === edit.item.id)
  if (there < 0 && list.length >= 5000) return issue('edit-list-full', 'block', [edit.item.id], { collection: edit.collection, limit: 5000 })
  const item = parsed.data as { id: string }
  const at = there >= 0 ? there : Math.min(edit.at ?? list.length, list.length)
  const next = there >= 0 ? list.with(there, item) : list.toSpliced(at, 0, item)
  const before = list[there]
  return {
    doc: { ...doc, [edit.collection]: next },
    inverse: before ? { kind: 'addItem', collection: edit.collection, item: before } : { kind: 'removeItem', collection: edit.collection, id: item.id },
    touches: [`${edit.collection}/${item.id}`],
  }
}
