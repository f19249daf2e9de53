import { z } from 'zod'
import { pointField } from '../documents/fields'

/**
 * Edits as data: each can be sent, stored, replayed, undone and merged. Undo, autosave,
 * the outbox of an offline device and the audit trail are one list of these.
 */

const collection = z.string().regex(/^[a-zA-Z]{1,40}$/).describe('list of the document, such as fillSites')
const itemId = z.string().min(1).max(64)

const addItemSchema = z.strictObject({
  kind: z.literal('addItem'),
  collection,
  item: z.looseObject({ id: itemId }),
  at: z.number().int().min(0).optional().describe('place in the list; absent: the end'),
})
const removeItemSchema = z.strictObject({ kind: z.literal('removeItem'), collection, id: itemId })
/** `null` takes a field away. With no collection the fields are the document's own. */
const setFieldsSchema = z.strictObject({
  kind: z.literal('setFields'),
  collection: collection.optional(),
  id: itemId.optional(),
  set: z.record(z.string().max(60), z.unknown()),
  evidence: z.record(z.string().max(60), z.unknown()).optional().describe('by field; null takes it away'),
})
const moveSiteSchema = z.strictObject({ kind: z.literal('moveSite'), collection, id: itemId, point: pointField })

export const editBodySchema = z.discriminatedUnion('kind', [addItemSchema, removeItemSchema, setFieldsSchema, moveSiteSchema])

/** An edit on its way to the store. `base` is the sequence number of the document it was made on. */
export const editSchema = z.strictObject({
  id: z.string().min(8).max(64),
  docId: itemId,
  base: z.number().int().min(0),
  by: z.string().max(120),
  at: z.string().max(40),
  body: editBodySchema,
})

export type AddItem = z.infer<typeof addItemSchema>
export type RemoveItem = z.infer<typeof removeItemSchema>
export type SetFields = z.infer<typeof setFieldsSchema>
export type MoveSite = z.infer<typeof moveSiteSchema>
export type EditBody = z.infer<typeof editBodySchema>
export type Edit = z.infer<typeof editSchema>

/** What an edit did: the new document, the edit that takes it back, and the paths it touched. */
export type Applied<D> = { doc: D; inverse: EditBody; touches: string[] }
