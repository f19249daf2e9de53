import { issue, type Issue } from '../../issue'
import { documentKindOf, type EditableDocument } from './document-kind'
import { findItemSchema, schemaOf } from './document-shape'
import type { Applied, SetFields } from './edit'
import { invalid, missing, noSuchList } from './refusal'

type Fields = Record<string, unknown>

/**
 * Sets fields of an item, or of the document itself, with their evidence; null takes a field away.
 *
 * @returns the new document and its inverse; an issue when there is no such item or the document cannot hold the values
 */
export function setFields<D extends EditableDocument>(doc: D, edit: SetFields): Applied<D> | Issue {
  const where = findTarget(doc, edit)
  if ('code' in where) return where
  const { target, path, schema, put } = where
  if ([...forbidden, ...(edit.collection ? [] : listFields(doc))].some((field) => Object.hasOwn(edit.set, field)))
    return issue('edit-field-fixed', 'block', [target.id], { path })
  const next = merged(target, edit.set) as Fields & { id: string }
  if (edit.evidence) {
    const evidence = merged((target.evidence ?? {}) as Fields, edit.evidence)
    if (Object.keys(evidence).length > 0) next.evidence = evidence
    else delete next.evidence
  }
  const parsed = schema.safeParse(next)
  if (!parsed.success) return invalid(parsed.error, path, target.id)
  return {
    doc: put(next),
    inverse: {
      kind: 'setFields',
      ...(edit.collection && { collection: edit.collection, id: target.id }),
      set: before(target, edit.set),
      ...(edit.evidence && { evidence: before((target.evidence ?? {}) as Fields, edit.evidence) }),
    },
    touches: [...new Set([...Object.keys(edit.set), ...Object.keys(edit.evidence ?? {})])].map((field) => (path ? `${path}/${field}` : field)),
  }
}

/** An item keeps its id and kind for life; evidence has its own part of the edit. */
const forbidden = ['id', 'kind', 'districtId', 'evidence', '__proto__']

function listFields(doc: EditableDocument): string[] {
  const kind = documentKindOf(doc)
  return Object.keys(doc).filter((field) => findItemSchema(kind, field))
}

function findTarget<D extends EditableDocument>(doc: D, edit: SetFields) {
  const kind = documentKindOf(doc)
  if (!edit.collection) return { target: doc as Fields & { id: string }, path: '', schema: schemaOf(kind), put: (next: Fields) => next as D }
  const collection = edit.collection
  const schema = findItemSchema(kind, collection)
  if (!schema) return noSuchList(collection)
  const list = (doc[collection] ?? []) as (Fields & { id: string })[]
  const at = list.findIndex(({ id }) => id === edit.id)
  const target = list[at]
  if (!target) return missing(collection, edit.id ?? '')
  return { target, path: `${collection}/${target.id}`, schema, put: (next: Fields) => ({ ...doc, [collection]: list.with(at, next as typeof target) }) as D }
}

function merged(target: Fields, set: Fields): Fields {
  const next = { ...target }
  for (const [field, value] of Object.entries(set)) {
    if (value === null || value === undefined) delete next[field]
    else next[field] = value
  }
  return next
}

const before = (target: Fields, set: Fields): Fields =>
  Object.fromEntries(Object.keys(set).map((field) => [field, target[field] ?? null]))
