import type { z } from 'zod'
import { issue, type Issue } from '../issue'

type Raw = z.core.$ZodIssue

/**
 * What the schema refused, as issues whose words live in the message files.
 *
 * @param prefix where the checked value stands, such as `plan`; joined before each path
 * @param root   the value that was checked: lets a path carry the item's name beside its number
 */
export function issuesFromZod(error: z.ZodError, prefix = '', root?: unknown): Issue[] {
  return error.issues.flatMap((raw) => issueFrom(raw, prefix, root))
}

function issueFrom(raw: Raw, prefix: string, root: unknown): Issue[] {
  const path = pathText(raw.path, prefix, root)
  const say = (code: string, values: Record<string, number | string> = {}) => [issue(code, 'block', [], { path, ...values })]
  switch (raw.code) {
    case 'invalid_type':
      return valueAt(root, raw.path) === undefined && root !== undefined
        ? say('input-missing', { expected: raw.expected })
        : say('input-wrong-type', { expected: raw.expected })
    case 'too_small':
      return say(raw.origin === 'string' || raw.origin === 'array' ? 'input-too-short' : 'input-too-small', { limit: Number(raw.minimum) })
    case 'too_big':
      return say(raw.origin === 'string' || raw.origin === 'array' ? 'input-too-long' : 'input-too-big', { limit: Number(raw.maximum) })
    case 'unrecognized_keys':
      return raw.keys.map((key) => issue('input-unknown-field', 'block', [], { path: path || prefix || 'file', key }))
    case 'invalid_value':
      return say('input-not-a-choice', { choices: raw.values.map(String).join(', ') })
    case 'invalid_format':
      return say('input-wrong-form')
    case 'invalid_union':
      return raw.errors.length === 0 ? say('input-not-a-choice', { choices: 'note' in raw ? String(raw.discriminator ?? 'kind') : 'kind' }) : say('input-other')
    default:
      return say('input-other')
  }
}

function valueAt(root: unknown, path: readonly PropertyKey[]): unknown {
  let value = root
  for (const key of path) {
    if (value === null || typeof value !== 'object') return undefined
    value = (value as Record<PropertyKey, unknown>)[key]
  }
  return value
}

/** `plan.fillSites[0] (Mill pond).lift_ft`: a person finds the place by its name. */
function pathText(path: readonly PropertyKey[], prefix: string, root: unknown): string {
  let text = prefix
  let value = root
  for (const key of path) {
    value = value !== null && typeof value === 'object' ? (value as Record<PropertyKey, unknown>)[key] : undefined
    if (typeof key === 'number') {
      const name = value !== null && typeof value === 'object' && 'name' in value ? ` (${String(value.name)})` : ''
      text += `[${key}]${name}`
    } else text += (text ? '.' : '') + String(key)
  }
  return text
}
