import type { z } from 'zod'
import { findItemSchema } from '../plan'
import { findUnit, type Unit } from '../units'
import { isDistrictList, type ItemList } from './place'

/** What a column may become, as the document's own schema has it. */
export type FieldSpec = {
  /** `lift_ft`, or `suction.size_in` for what lies in a part. */
  readonly path: string
  readonly type: 'number' | 'whole' | 'yesNo' | 'text' | 'choice' | 'day' | 'ref' | 'json'
  readonly isRequired: boolean
  readonly unit?: Unit
  readonly low?: number
  readonly high?: number
  readonly mostCharacters?: number
  readonly choices?: readonly string[]
}

/** Told by the reader itself, not by a column's field. */
const APART = new Set(['id', 'name', 'point', 'points'])

const kept = new Map<ItemList, readonly FieldSpec[]>()

/** Every field of the items of a list, read off the schema that checks them, in its order. */
export function fieldsOf(list: ItemList): readonly FieldSpec[] {
  const there = kept.get(list)
  if (there) return there
  const schema = findItemSchema(isDistrictList(list) ? 'district' : 'plan', list) as z.ZodObject
  const made = Object.entries(schema.shape as Record<string, z.ZodType>).flatMap(([name, field]) => (APART.has(name) ? [] : specsOf(name, field, true)))
  kept.set(list, made)
  return made
}

/** A field of a list by its path as the file has it (`point.lat`, `lift_ft`). */
export const findField = (list: ItemList, path: string): FieldSpec | undefined => fieldsOf(list).find((field) => field.path === path)

function specsOf(path: string, field: z.ZodType, isOuterRequired: boolean): FieldSpec[] {
  const isOptional = field.def.type === 'optional'
  const inner = isOptional ? (field as z.ZodOptional<z.ZodType>).unwrap() : field
  const isRequired = isOuterRequired && !isOptional
  const base = { path, isRequired }
  switch (inner.def.type) {
    case 'number': {
      const { minValue, maxValue, isInt } = inner as z.ZodNumber
      const unit = findUnit(path)
      return [{ ...base, type: isInt ? 'whole' : 'number', ...(unit && { unit }), ...(minValue !== null && { low: minValue }), ...(maxValue !== null && { high: maxValue }) }]
    }
    case 'boolean': return [{ ...base, type: 'yesNo' }]
    case 'enum': return [{ ...base, type: 'choice', choices: (inner as z.ZodEnum).options.map(String) }]
    case 'string': {
      const { maxLength } = inner as z.ZodString
      if (inner.description?.startsWith('calendar day')) return [{ ...base, type: 'day' }]
      if (/Id$/.test(path)) return [{ ...base, type: 'ref' }]
      return [{ ...base, type: 'text', ...(maxLength !== null && { mostCharacters: maxLength }) }]
    }
    case 'object': return Object.entries((inner as z.ZodObject).shape as Record<string, z.ZodType>).flatMap(([part, one]) => specsOf(`${path}.${part}`, one, isRequired))
    default: return [{ ...base, type: 'json' }]
  }
}
