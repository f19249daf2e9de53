import type { z } from 'zod'
import { findItemSchema, schemaOf, type DocumentKind } from '@/lib/plan'

/** What a document lets a field be: read off the schema that checks it, so that forms and store never differ. */
export type FieldRule = { min?: number; max?: number; maxLength?: number; isInteger?: boolean; choices?: readonly string[] }

/**
 * @param collection list of the document; absent: the document's own fields
 * @param itemKind   the item's `kind`, for lists whose items are of several kinds
 * @param part       field of the item that holds the field, such as `suction`, or a list of parts that each hold it
 */
export function fieldRule(docKind: DocumentKind, collection: string | undefined, itemKind: string | undefined, field: string, part?: string): FieldRule {
  const schema = collection === undefined ? schemaOf(docKind) : findItemSchema(docKind, collection)
  const whole = schema && shapeOf(schema, itemKind)
  const inner = part === undefined ? undefined : whole?.[part]
  const shape = part === undefined ? whole : inner && shapeOf(elementOf(unwrapped(inner)), undefined)
  const found = shape?.[field]
  return found ? ruleOf(unwrapped(found)) : {}
}

/** Of a list the schema of its items. */
const elementOf = (schema: z.ZodType): z.ZodType => (schema.def.type === 'array' ? (schema as z.ZodArray<z.ZodType>).element : schema)

function shapeOf(schema: z.ZodType, itemKind: string | undefined): Record<string, z.ZodType> | undefined {
  const { def } = schema
  if (def.type === 'object') return (schema as z.ZodObject).shape as Record<string, z.ZodType>
  if (def.type !== 'union') return undefined
  const options = (schema as z.ZodUnion<z.ZodObject[]>).options
  return options.map((option) => option.shape as Record<string, z.ZodType>).find((shape) => {
    const kind = shape.kind
    return kind?.def.type === 'literal' && (kind as z.ZodLiteral<string>).value === itemKind
  })
}

function unwrapped(schema: z.ZodType): z.ZodType {
  return schema.def.type === 'optional' ? unwrapped((schema as z.ZodOptional<z.ZodType>).unwrap()) : schema
}

function ruleOf(schema: z.ZodType): FieldRule {
  if (schema.def.type === 'number') {
    const { minValue, maxValue, isInt } = schema as z.ZodNumber
    return { ...(minValue !== null && { min: minValue }), ...(maxValue !== null && { max: maxValue }), isInteger: isInt }
  }
  if (schema.def.type === 'string') {
    const { maxLength } = schema as z.ZodString
    return maxLength === null ? {} : { maxLength }
  }
  return schema.def.type === 'enum' ? { choices: (schema as z.ZodEnum).options.map(String) } : {}
}
