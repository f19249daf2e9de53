import { z } from 'zod'
import { documentKindOf, documentKinds, editBodySchema, siteEventSchema, type District, type EditableDocument } from '@/lib/plan'

/**
 * The archive of a district: one zip file with the district, its plans, exercises and logs (deleted ones marked), the whole history of
 * each, and its roads, map and terrain. `manifest.json` names every other part with its size and SHA-256.
 */
export const ARCHIVE_VERSION = 1
export const ARCHIVE_ENDING = '.millrace.zip'
export const MANIFEST = 'manifest.json'
export const ARCHIVE_TYPE = 'application/zip'

/** The most that what is in the file, and each of its parts, may hold. */
export const UNPACKED_LIMIT_MB = 512
export const PART_LIMIT_MB = 64
export const MOST_PARTS = 5000

const hash = z.string().regex(/^[0-9a-f]{64}$/)
const moment = z.iso.datetime()

const blobKinds = ['roads', 'map', 'terrain'] as const

const partSchema = z.strictObject({
  name: z.string().regex(/^(?:district\.json|(?:plans|exercises|logs)\/\d{1,5}\.json|blobs\/[0-9a-f]{64})$/),
  kind: z.enum([...documentKinds, ...blobKinds]),
  size: z.number().int().min(0).max(PART_LIMIT_MB * 1024 * 1024),
  sha256: hash,
})

export const manifestSchema = z.strictObject({
  format: z.literal('millrace-archive'),
  version: z.literal(ARCHIVE_VERSION),
  madeAt: moment,
  district: z.strictObject({ id: z.string().min(1).max(64), name: z.string().max(400) }),
  parts: z.array(partSchema).min(1).max(MOST_PARTS),
  missing: z.array(z.strictObject({ kind: z.enum(blobKinds), hash })).max(blobKinds.length)
    .describe('data that the district names and that was not there when the archive was made'),
})

const archivedEditSchema = z.strictObject({
  id: z.string().min(1).max(64),
  sequence: z.number().int().min(1),
  body: editBodySchema,
  inverse: editBodySchema,
  touches: z.array(z.string()),
  by: z.string().max(120),
  at: moment,
})

/** An event of a log, in its place among them. */
const archivedEventSchema = z.strictObject({ number: z.number().int().min(1), event: siteEventSchema, receivedAt: moment })

/** A document with its history from the first edit to the newest state, and a log with its events. */
export const archivedDocumentSchema = z.strictObject({
  doc: z.unknown(),
  sequence: z.number().int().min(0),
  createdAt: moment,
  updatedAt: moment,
  deletedAt: moment.optional(),
  edits: z.array(archivedEditSchema),
  events: z.array(archivedEventSchema).optional().describe('of a log, in the order in which they came'),
})

export type ArchivePart = z.infer<typeof partSchema>
export type Manifest = z.infer<typeof manifestSchema>
export type ArchivedEvent = z.infer<typeof archivedEventSchema>
export type ArchivedDocument = Omit<z.infer<typeof archivedDocumentSchema>, 'doc'> & { doc: EditableDocument }

/** Data that a district names: what each is, and the hash of its bytes. */
export function dataNamedBy(doc: EditableDocument): { kind: (typeof blobKinds)[number]; hash: string }[] {
  if (documentKindOf(doc) !== 'district') return []
  const district = doc as unknown as District
  return blobKinds.flatMap((kind) => (district[kind] ? [{ kind, hash: district[kind].hash }] : []))
}
