import type { z } from 'zod'
import { districtSchema } from '../documents/district'
import { exerciseSchema } from '../documents/exercise'
import { logSchema } from '../documents/log'
import { planSchema } from '../documents/plan'
import type { DocumentKind } from './document-kind'

const schemas: Record<DocumentKind, z.ZodObject> = { district: districtSchema, plan: planSchema, exercise: exerciseSchema, log: logSchema }

/** The schema of a whole document. */
export const schemaOf = (kind: DocumentKind): z.ZodObject => schemas[kind]

/** Schema of the items of a list, or undefined when the document has no such list of items. */
export function findItemSchema(kind: DocumentKind, collection: string): z.ZodType | undefined {
  let field = schemas[kind].shape[collection] as z.ZodType | undefined
  if (field?.def.type === 'optional') field = (field as z.ZodOptional<z.ZodType>).unwrap()
  if (field?.def.type !== 'array') return undefined
  return (field as z.ZodArray<z.ZodType>).element
}
