import type { z } from 'zod'
import { districtSchema } from '../documents/district'
import { exerciseSchema } from '../documents/exercise'
import { logSchema } from '../documents/log'
import { planSchema } from '../documents/plan'

/** Kinds of document that edits apply to. */
export const documentKinds = ['district', 'plan', 'exercise', 'log'] as const
export type DocumentKind = (typeof documentKinds)[number]

/** A document as edits see it: fields, and lists of items with ids. */
export type EditableDocument = { id: string; [field: string]: unknown }

const schemas: Record<DocumentKind, z.ZodObject> = { district: districtSchema, plan: planSchema, exercise: exerciseSchema, log: logSchema }

/** A plan, an exercise and a log name their district; an exercise holds the bundle it is played on, a log says what it is. */
export function documentKindOf(doc: EditableDocument): DocumentKind {
  if (!('districtId' in doc)) return 'district'
  if (doc.format === 'millrace-log') return 'log'
  return 'bundle' in doc ? 'exercise' : 'plan'
}

/** The schema of a whole document. */
export const schemaOf = (kind: DocumentKind): z.ZodObject => schemas[kind]

/** Schema of the items of a list, or undefined when the document has no such list of items. */
export function findItemSchema(kind: DocumentKind, collection: string): z.ZodType | undefined {
  let field = schemas[kind].shape[collection] as z.ZodType | undefined
  if (field?.def.type === 'optional') field = (field as z.ZodOptional<z.ZodType>).unwrap()
  if (field?.def.type !== 'array') return undefined
  return (field as z.ZodArray<z.ZodType>).element
}
