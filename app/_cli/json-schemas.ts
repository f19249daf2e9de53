import { z } from 'zod'
import { bundleSchema } from '@/lib/plan'
import { resultSchema } from '@/lib/supply'

/** The published schemas, by file name under public/schemas. */
export function jsonSchemas(): Record<string, string> {
  const files = { 'bundle.schema.json': bundleSchema, 'result.schema.json': resultSchema }
  return Object.fromEntries(
    Object.entries(files).map(([name, schema]) => [name, `${JSON.stringify(z.toJSONSchema(schema, { target: 'draft-2020-12' }), null, 2)}\n`]),
  )
}
