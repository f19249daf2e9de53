import { IntlMessageFormat } from 'intl-messageformat'
import { LOCALE } from './format-number'
import type { TextKey } from './messages'
import { findMessage } from './words'

export type TextValue = string | number
export type TextValues = Readonly<Record<string, TextValue>>

const compiled = new Map<string, IntlMessageFormat>()

function messageOf(key: string): IntlMessageFormat {
  let message = compiled.get(key)
  if (!message) {
    const text = findMessage(key)
    if (text === undefined) throw new RangeError(`key is ${key}, must be one of the message files`)
    message = new IntlMessageFormat(text, LOCALE, undefined, { ignoreTag: true })
    compiled.set(key, message)
  }
  return message
}

/**
 * The words of a key, with its values put in (ICU MessageFormat).
 *
 * @throws RangeError if there is no such key; Error if the message needs a value that is not given
 */
export function say(key: TextKey, values?: TextValues): string {
  return String(messageOf(key).format(values))
}

/** Whether there are words for a key that was put together at run time. */
export const isTextKey = (key: string): key is TextKey => findMessage(key) !== undefined

/** Names of the values that a message takes. */
export function argumentsOf(key: string): string[] {
  const names = new Set<string>()
  const visit = (node: unknown): void => {
    if (Array.isArray(node)) { node.forEach(visit); return }
    if (typeof node !== 'object' || node === null) return
    if ('type' in node && 'value' in node && typeof node.value === 'string' && node.type !== 0 && node.type !== 7) names.add(node.value)
    if ('options' in node) visit(Object.values(node.options ?? {}))
    if ('value' in node && Array.isArray(node.value)) visit(node.value)
    if ('children' in node) visit(node.children)
  }
  visit(messageOf(key).getAst())
  return [...names]
}
