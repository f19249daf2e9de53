import type { EditableDocument } from '@/lib/plan'

type Fields = Record<string, unknown>

/** What stands at a touched path (`fillSites/F1/lift_ft`, `fillSites/F1`, `name`); undefined when nothing does. */
export function valueAtPath(doc: EditableDocument, path: string): unknown {
  const { holder, field } = placeOf(doc, path)
  return field === undefined ? holder : holder?.[field]
}

/** True when two documents say the same at a path: the value, and where it is known from. */
export function isSameAtPath(a: EditableDocument, b: EditableDocument, path: string): boolean {
  return isSameValue(valueAtPath(a, path), valueAtPath(b, path)) && isSameValue(evidenceAt(a, path), evidenceAt(b, path))
}

/** Equal as the store would write them: order of fields does not matter, absent fields do not count. */
function isSameValue(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false
  if (Array.isArray(a) !== Array.isArray(b)) return false
  const left = a as Fields
  const right = b as Fields
  return [...new Set([...Object.keys(left), ...Object.keys(right)])].every((key) => isSameValue(left[key], right[key]))
}

function placeOf(doc: EditableDocument, path: string): { holder: Fields | undefined; field: string | undefined } {
  const [first = '', id, field] = path.split('/')
  if (id === undefined) return { holder: doc, field: first }
  const list = doc[first]
  const holder = Array.isArray(list) ? (list as (Fields & { id: string })[]).find((item) => item.id === id) : undefined
  return { holder, field }
}

function evidenceAt(doc: EditableDocument, path: string): unknown {
  const { holder, field } = placeOf(doc, path)
  return field === undefined ? undefined : (holder?.evidence as Fields | undefined)?.[field]
}
