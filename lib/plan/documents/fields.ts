import { z } from 'zod'
import { evidenceMarks } from '../../evidence'

/**
 * Pieces of which every document is made. A quantity is a plain number whose field name
 * ends in its unit; absent means not known. Bounds are those of a typing mistake, not of
 * physics: what cannot work is reported by the checks and by the evaluation.
 */

/** An id is a string that knows what it names; a plain string may stand for one, another kind's id may not. */
export type Id<K extends string> = string & { readonly kind?: K }

/** An id of one kind, up to 64 letters that need no escaping in addresses and file names. */
export const idOf = <K extends string>(kind: K) =>
  z.string().regex(/^[A-Za-z0-9][A-Za-z0-9_.:-]{0,63}$/).describe(`id of a ${kind}`) as z.ZodType<Id<K>>

export const nameField = z.string().trim().min(1).max(120)
export const notesField = z.string().max(4000)
/** Calendar day, ISO 8601. */
export const dayField = z.string().regex(/^\d{4}-\d{2}-\d{2}$/).describe('calendar day, YYYY-MM-DD')

/** A number from `low` to `high`, in the unit that its field’s name ends in. */
export const quantity = (low: number, high: number) => z.number().min(low).max(high)
/** A whole number from `low` to `high`. */
export const countField = (low: number, high: number) => z.number().int().min(low).max(high)
export const shareField = z.number().min(0).max(1)

export const flowField = quantity(0, 20_000)
export const volumeField = quantity(0, 100_000_000)
export const timeField = quantity(0, 172_800)
export const pressureField = quantity(0, 600)
export const weightField = quantity(0, 250_000)
export const hoseSizeField = quantity(0.5, 24)
export const hoseLengthField = quantity(0, 100_000)

export const pointField = z.strictObject({ lat: z.number().min(-90).max(90), lon: z.number().min(-180).max(180) })

const evidenceSchema = z.strictObject({
  mark: z.enum(evidenceMarks),
  by: z.string().max(120).optional(),
  on: dayField.optional(),
  source: z.string().max(400).optional(),
  spreadShare: z.number().min(0).max(1).optional(),
  entered: z.string().max(80).optional(),
})

/** Evidence of an item's numbers, keyed by field. */
export const evidenceMap = z.record(z.string().max(60), evidenceSchema)

/** Fields that every stored item has. */
export const itemFields = <K extends string>(kind: K) => ({
  id: idOf(kind),
  name: nameField,
  notes: notesField.optional(),
  evidence: evidenceMap.optional(),
})
