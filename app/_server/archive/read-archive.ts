import { createHash } from 'node:crypto'
import { isDeepStrictEqual } from 'node:util'
import { unzipSync, type UnzipFileInfo } from 'fflate'
import type { z } from 'zod'
import { documentKindOf, documentKinds, issuesFromZod, type EditableDocument } from '@/lib/plan'
import { sayIssue } from '@/app/_text'
import { checkedDocument } from '../documents'
import { Refusal, refusal } from '../refusal'
import {
  archivedDocumentSchema, ARCHIVE_VERSION, dataNamedBy, MANIFEST, manifestSchema, MOST_PARTS, PART_LIMIT_MB, UNPACKED_LIMIT_MB,
  type ArchivedDocument, type ArchivePart, type Manifest,
} from './archive-form'

/** An archive of which every part has been checked. The bytes of its data are unpacked when they are asked for. */
export type Archive = {
  manifest: Manifest
  district: ArchivedDocument
  /** Everything that belongs to the district: its plans, exercises and logs. */
  plans: ArchivedDocument[]
  data: { hash: string; kind: string; size: number; bytes: () => Uint8Array<ArrayBuffer> }[]
}

const BYTES_PER_MB = 1024 * 1024

/** Lets others have their turn between two parts. */
const turn = () => new Promise((resolve) => setImmediate(resolve))

/**
 * Reads an archive and checks all of it: its form, the size and hash of every part, every document and edit, and that
 * they belong together. Names in the file are compared and never used as paths; nothing is unpacked beyond what the
 * manifest and the limits allow.
 *
 * @throws Refusal that names the part and what is wrong with it
 */
export async function readArchive(bytes: Uint8Array): Promise<Archive> {
  const entries = listEntries(bytes)
  const manifest = readManifest(bytes, entries)
  checkParts(manifest, entries)
  const documents: { part: ArchivePart; document: ArchivedDocument }[] = []
  for (const part of manifest.parts) {
    await turn()
    const content = unpackPart(bytes, part)
    if (documentKinds.some((kind) => kind === part.kind)) documents.push({ part, document: readDocument(part.name, content) })
  }
  const district = documents.find(({ part }) => part.kind === 'district')?.document
  if (!district) throw refusal('archive-part-missing', { part: 'district.json' }, 'district.json')
  const plans = documents.filter(({ part }) => part.kind !== 'district').map(({ document }) => document)
  checkTogether(manifest, district, plans)
  const data = manifest.parts.filter(({ name }) => name.startsWith('blobs/'))
    .map((part) => ({ hash: part.sha256, kind: part.kind, size: part.size, bytes: () => unpackPart(bytes, part) }))
  return { manifest, district, plans, data }
}

function listEntries(bytes: Uint8Array): Map<string, UnzipFileInfo> {
  const entries = new Map<string, UnzipFileInfo>()
  let unpacked = 0
  try {
    unzipSync(bytes, {
      filter: (entry) => {
        if (entries.has(entry.name)) throw refusal('archive-part-twice', { part: shown(entry.name) })
        unpacked += entry.originalSize
        entries.set(entry.name, entry)
        if (entries.size > MOST_PARTS + 1 || unpacked > UNPACKED_LIMIT_MB * BYTES_PER_MB) throw refusal('archive-too-large', { limit_MB: UNPACKED_LIMIT_MB })
        return false
      },
    })
  } catch (error) {
    throw error instanceof Refusal ? error : refusal('archive-not-zip')
  }
  return entries
}

/** A name from outside, short enough for a sentence. */
const shown = (name: string): string => name.replace(/\p{Cc}/gu, ' ').slice(0, 80)

function unpackEntry(bytes: Uint8Array, name: string): Uint8Array<ArrayBuffer> | undefined {
  try {
    const found = unzipSync(bytes, { filter: (entry) => entry.name === name })[name]
    return found && new Uint8Array(found)
  } catch {
    throw refusal('archive-part-damaged', { part: name }, name)
  }
}

function unpackPart(bytes: Uint8Array, { name, size, sha256 }: ArchivePart): Uint8Array<ArrayBuffer> {
  const content = unpackEntry(bytes, name)
  const isWhole = content?.byteLength === size && createHash('sha256').update(content).digest('hex') === sha256
  if (!content || !isWhole) throw refusal('archive-part-damaged', { part: name }, name)
  return content
}

function jsonOf(content: Uint8Array, name: string): unknown {
  try {
    return JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(content)) as unknown
  } catch {
    throw refusal('archive-part-damaged', { part: name }, name)
  }
}

function refusalFromZod(error: z.ZodError, name: string, given: unknown): Refusal {
  const [issue] = issuesFromZod(error, '', given)
  return refusal('archive-part-wrong', { part: name, reason: issue ? sayIssue(issue, () => undefined, 'us') : '' }, name)
}

function readManifest(bytes: Uint8Array, entries: ReadonlyMap<string, UnzipFileInfo>): Manifest {
  const entry = entries.get(MANIFEST)
  if (!entry || entry.originalSize > PART_LIMIT_MB * BYTES_PER_MB) throw refusal('archive-no-manifest')
  const given = jsonOf(unpackEntry(bytes, MANIFEST) ?? new Uint8Array(), MANIFEST)
  const head = typeof given === 'object' && given !== null ? (given as { format?: unknown; version?: unknown }) : {}
  if (head.format !== 'millrace-archive') throw refusal('archive-no-manifest')
  if (typeof head.version === 'number' && head.version > ARCHIVE_VERSION) throw refusal('archive-newer', { version: head.version })
  const parsed = manifestSchema.safeParse(given)
  if (!parsed.success) throw refusalFromZod(parsed.error, MANIFEST, given)
  return parsed.data
}

/** The manifest names each part once, the file holds exactly these, and each is as large as it says before it is unpacked. */
function checkParts(manifest: Manifest, entries: ReadonlyMap<string, UnzipFileInfo>): void {
  const named = new Set<string>()
  for (const { name, kind, size, sha256 } of manifest.parts) {
    if (named.has(name)) throw refusal('archive-part-twice', { part: name }, name)
    named.add(name)
    const entry = entries.get(name)
    if (!entry) throw refusal('archive-part-missing', { part: name }, name)
    const folder = kind === 'district' ? 'district.json' : documentKinds.some((one) => one === kind) ? `${kind}s/` : `blobs/${sha256}`
    if (entry.originalSize !== size || !name.startsWith(folder)) throw refusal('archive-part-damaged', { part: name }, name)
  }
  const extra = [...entries.keys()].find((name) => name !== MANIFEST && !named.has(name))
  if (extra !== undefined) throw refusal('archive-part-extra', { part: shown(extra) })
}

function readDocument(name: string, content: Uint8Array): ArchivedDocument {
  const given = jsonOf(content, name)
  const parsed = archivedDocumentSchema.safeParse(given)
  if (!parsed.success) throw refusalFromZod(parsed.error, name, given)
  const { edits, sequence, events = [] } = parsed.data
  if (edits.length !== sequence || edits.some((edit, at) => edit.sequence !== at + 1)) throw refusal('archive-history', { part: name }, name)
  try {
    const doc = checkedDocument(parsed.data.doc)
    const areEventsApart = parsed.data.events && documentKindOf(doc) !== 'log'
    if (areEventsApart || events.some(({ number, event }, at) => number !== at + 1 || event.logId !== doc.id)) throw refusal('archive-events', { part: name }, name)
    // As it was written where nothing speaks against it, so that the same document has the same text.
    return { ...parsed.data, doc: isDeepStrictEqual(doc, parsed.data.doc) ? (parsed.data.doc as EditableDocument) : doc }
  } catch (error) {
    throw error instanceof Refusal && error.code !== 'archive-events' ? refusal('archive-part-wrong', { part: name, reason: error.sentence }, name) : error
  }
}

function checkTogether(manifest: Manifest, district: ArchivedDocument, plans: readonly ArchivedDocument[]): void {
  const { id } = district.doc
  const apart = () => refusal('archive-apart')
  if (id !== manifest.district.id || documentKindOf(district.doc) !== 'district' || district.deletedAt) throw apart()
  if (plans.some(({ doc }) => documentKindOf(doc) === 'district' || doc.districtId !== id)) throw apart()
  if (new Set([id, ...plans.map(({ doc }) => doc.id)]).size !== plans.length + 1) throw apart()
  const editIds = [district, ...plans].flatMap(({ edits }) => edits.map((edit) => edit.id))
  if (new Set(editIds).size !== editIds.length) throw apart()
  const eventIds = plans.flatMap(({ events = [] }) => events.map(({ event }) => event.id))
  if (new Set(eventIds).size !== eventIds.length) throw apart()
  const named = new Set(dataNamedBy(district.doc).map(({ hash }) => hash))
  const given = new Set([...manifest.parts.filter(({ name }) => name.startsWith('blobs/')), ...manifest.missing.map(({ hash }) => ({ sha256: hash }))].map(({ sha256 }) => sha256))
  if (named.size !== given.size || [...named].some((hash) => !given.has(hash))) throw apart()
}
