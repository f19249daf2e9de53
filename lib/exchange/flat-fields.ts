import type { Scalar } from './place'

/** Parts that are kept whole as one text, whatever is in them. */
const WHOLE = new Set(['evidence'])

const isPlain = (value: unknown): value is Record<string, unknown> => typeof value === 'object' && value !== null && !Array.isArray(value)

/** Characters that JSON may leave as they are and XML cannot hold, escaped as well. */
const json = (value: object): string => JSON.stringify(value).replace(/[\u007f-\u009f\ufffe\uffff]/g, (character) => `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`)

/**
 * Fields as columns: what lies in a part gets the part's name and a dot before its own (`suction.size_in`); lists and
 * evidence become one column of JSON (RFC 8259). What is absent or null has no column.
 */
export function flatFields(fields: Readonly<Record<string, unknown>>, isWhole: (name: string) => boolean = (name) => WHOLE.has(name)): Record<string, Scalar> {
  const flat: Record<string, Scalar> = {}
  const put = (path: string, value: unknown): void => {
    if (value === null || value === undefined) return
    flat[path] = typeof value === 'object' ? json(value) : (value as Scalar)
  }
  // What a person may look for comes before how it is known.
  const inOrder = Object.entries(fields).sort(([a], [b]) => Number(isWhole(a)) - Number(isWhole(b)))
  for (const [name, value] of inOrder) {
    if (!isPlain(value) || isWhole(name)) put(name, value)
    else for (const [part, inner] of Object.entries(value)) put(`${name}.${part}`, inner)
  }
  return flat
}

/** The other way: `suction.size_in` lies in `suction` again. Values are those that the columns were read as. */
export function deepFields(flat: Readonly<Record<string, unknown>>): Record<string, unknown> {
  const fields: Record<string, unknown> = {}
  for (const [path, value] of Object.entries(flat)) {
    const dot = path.indexOf('.')
    if (dot < 0) fields[path] = value
    else fields[path.slice(0, dot)] = { ...(fields[path.slice(0, dot)] as object | undefined), [path.slice(dot + 1)]: value }
  }
  return fields
}
