import { createHash } from 'node:crypto'
import { documentKindOf, type EditBody, type SiteEvent } from '@/lib/plan'
import { docOf } from '../documents'
import type { Database } from '../open-database'
import { refusal } from '../refusal'
import { dataNamedBy, MANIFEST, type ArchivedDocument, type ArchivePart, type Manifest } from './archive-form'

export type PackedPart = { name: string; bytes: Uint8Array<ArrayBuffer> }
export type Gathered = { manifest: Manifest; parts: () => AsyncGenerator<PackedPart> }

type Transaction = Parameters<Parameters<Database['$transaction']>[0]>[0]

const sha256 = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex')
const bytesOf = (value: unknown): Uint8Array<ArrayBuffer> => new TextEncoder().encode(`${JSON.stringify(value)}\n`)

/**
 * All of a district, at one moment: documents and history are read in one transaction; data is found by its hash, which
 * never changes, so it is read part by part as it is packed.
 *
 * @param now when the archive is made
 * @throws Refusal if there is no such district, or it is deleted
 */
export async function gatherArchive(database: Database, districtId: string, now: Date): Promise<Gathered> {
  const { documents, data, missing } = await database.$transaction(async (rows) => {
    const found = await rows.document.findMany({ where: { OR: [{ id: districtId }, { districtId }] }, orderBy: [{ createdAt: 'asc' }, { id: 'asc' }] })
    const district = found.find(({ id, kind }) => id === districtId && kind === 'district')
    if (!district) throw refusal('not-found', { thing: 'district' }, 'id')
    if (district.deletedAt) throw refusal('deleted', {}, 'id')
    const ordered = [district, ...found.filter((row) => row !== district)]
    const documents: ArchivedDocument[] = []
    for (const row of ordered) documents.push(await withHistory(rows, row))
    const named = dataNamedBy(docOf(district))
    const there = await rows.blob.findMany({ where: { hash: { in: named.map(({ hash }) => hash) } }, select: { hash: true, size: true } })
    const sizes = new Map(there.map(({ hash, size }) => [hash, size]))
    return {
      documents,
      data: named.flatMap(({ kind, hash }) => (sizes.has(hash) ? [{ kind, hash, size: sizes.get(hash) ?? 0 }] : [])),
      missing: named.filter(({ hash }) => !sizes.has(hash)),
    }
  })
  const texts = documents.map((document, index) => {
    const kind = documentKindOf(document.doc)
    return { kind, name: kind === 'district' ? 'district.json' : `${kind}s/${index}.json`, bytes: bytesOf(document) }
  })
  const listed: ArchivePart[] = [
    ...texts.map(({ name, kind, bytes }): ArchivePart => ({ name, kind, size: bytes.byteLength, sha256: sha256(bytes) })),
    ...data.filter(({ hash }, at) => data.findIndex((other) => other.hash === hash) === at)
      .map(({ kind, hash, size }): ArchivePart => ({ name: `blobs/${hash}`, kind, size, sha256: hash })),
  ]
  const [first] = documents
  const manifest: Manifest = {
    format: 'millrace-archive', version: 1, madeAt: now.toISOString(),
    district: { id: districtId, name: String(first?.doc.name ?? '') }, parts: listed, missing,
  }
  return { manifest, parts: () => partsOf(database, manifest, texts) }
}

async function* partsOf(database: Database, manifest: Manifest, texts: readonly PackedPart[]): AsyncGenerator<PackedPart> {
  yield { name: MANIFEST, bytes: new TextEncoder().encode(`${JSON.stringify(manifest, null, 1)}\n`) }
  yield* texts
  for (const { name, sha256: hash } of manifest.parts.slice(texts.length)) {
    const row = await database.blob.findUnique({ where: { hash } })
    if (!row) throw refusal('not-found', { thing: 'data' }, 'hash')
    yield { name, bytes: row.bytes }
  }
}

type Row = { id: string; kind: string; body: string; sequence: number; createdAt: Date; updatedAt: Date; deletedAt: Date | null }

async function withHistory(rows: Transaction, row: Row): Promise<ArchivedDocument> {
  const edits = await rows.edit.findMany({ where: { docId: row.id }, orderBy: { sequence: 'asc' } })
  const events = row.kind === 'log' ? await rows.siteEvent.findMany({ where: { logId: row.id }, orderBy: { number: 'asc' } }) : undefined
  return {
    doc: docOf(row),
    sequence: row.sequence,
    createdAt: row.createdAt.toISOString(),
    updatedAt: row.updatedAt.toISOString(),
    ...(row.deletedAt && { deletedAt: row.deletedAt.toISOString() }),
    edits: edits.map(({ id, sequence, body, inverse, touches, by, at }) => ({
      id, sequence, body: JSON.parse(body) as EditBody, inverse: JSON.parse(inverse) as EditBody, touches: JSON.parse(touches) as string[], by, at: at.toISOString(),
    })),
    ...(events && { events: events.map(({ number, body, receivedAt }) => ({ number, event: JSON.parse(body) as SiteEvent, receivedAt: receivedAt.toISOString() })) }),
  }
}
