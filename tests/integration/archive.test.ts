import { execFile } from 'node:child_process'
import { createHash, randomBytes } from 'node:crypto'
import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import { promisify } from 'node:util'
import { unzipSync, zipSync } from 'fflate'
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { bundleFromDocuments } from '@/app/_client/bundle-documents'
import { gatherArchive } from '@/app/_server/archive/gather-archive'
import { packArchive } from '@/app/_server/archive/pack-archive'
import { readArchive } from '@/app/_server/archive/read-archive'
import { restoreArchive } from '@/app/_server/archive/restore-archive'
import { getBlob, putBlob } from '@/app/_server/blobs'
import { createDocument, getDocument, listDocuments, softDelete } from '@/app/_server/documents'
import { appendEdits, listEdits } from '@/app/_server/edits'
import type { Database } from '@/app/_server/open-database'
import type { District, Plan } from '@/lib/plan'
import { decodeRoadGraph, type RoadGraph } from '@/lib/roads'
import { evaluatePlan, legFinder, resolveLegs } from '@/lib/supply'
import { addSiteEvents, listSiteEvents } from '@/app/_server/site-events'
import { district, edit, log, plan, rename, setSource, siteEvent } from './support/documents'
import { makeFolder, prepareDatabase, root, scratchDatabase, type Scratch } from './support/scratch-database'

const NOW = new Date('2026-03-01T12:00:00.000Z')
const hashOf = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex')

async function archiveOf(database: Database, id: string): Promise<Uint8Array<ArrayBuffer>> {
  const pieces: Uint8Array[] = []
  for await (const piece of packArchive(await gatherArchive(database, id, NOW))) pieces.push(piece)
  return new Uint8Array(Buffer.concat(pieces))
}

async function everything(database: Database) {
  const documents = await database.document.findMany({ orderBy: { id: 'asc' } })
  const edits = await database.edit.findMany({ orderBy: [{ docId: 'asc' }, { sequence: 'asc' }] })
  const blobs = await database.blob.findMany({ omit: { bytes: true, createdAt: true }, orderBy: { hash: 'asc' } })
  const events = await database.siteEvent.findMany({ orderBy: [{ logId: 'asc' }, { number: 'asc' }] })
  return { documents, edits, blobs, events: events.map((row) => ({ ...row, body: JSON.parse(row.body) as unknown })) }
}

let from: Scratch
let to: Scratch
const roads = new Uint8Array(randomBytes(300_000))

beforeAll(async () => {
  from = await scratchDatabase()
  await putBlob(from.database, hashOf(roads), 'roads', roads)
  const dataSet = { hash: hashOf(roads), name: 'valley.osm.pbf', attribution: 'A. Surveyor', importedOn: '2026-01-01' }
  await createDocument(from.database, { ...district(), roads: dataSet })
  await createDocument(from.database, plan('P1'))
  await createDocument(from.database, plan('P2'))
  await createDocument(from.database, district('D2'))
  await appendEdits(from.database, 'D1', [edit('one', 0, setSource('S1', { usable_gal: 5000 })), edit('two', 0, rename('Alder Hollow East'))])
  await appendEdits(from.database, 'P1', [edit('three', 0, rename('Barn by the mill'), 'P1')])
  await softDelete(from.database, 'P2')
  await createDocument(from.database, log())
  await addSiteEvents(from.database, 'L1', [siteEvent(1), siteEvent(2, { replaces: siteEvent(1).id }), siteEvent(3, { kind: 'flow', value: 400 })])
})
afterAll(() => from.remove())

describe('an archive', () => {
  beforeEach(async () => { to = await scratchDatabase() })
  afterEach(() => to.remove())

  test('brings documents, deleted ones marked, the whole history and data into an empty install, and nothing else', async () => {
    const archive = await readArchive(await archiveOf(from.database, 'D1'))
    expect(await restoreArchive(to.database, archive)).toEqual({ outcome: 'restored', districtId: 'D1', name: 'Alder Hollow East', planCount: 1, missing: [] })
    const [was, is] = [await everything(from.database), await everything(to.database)]
    const isOfD1 = (row: { id: string; districtId: string | null }) => row.id === 'D1' || row.districtId === 'D1'
    expect(is.documents.map(({ deletedAt, ...row }) => ({ ...row, deletedAt: deletedAt !== null }))).toEqual(was.documents.filter(isOfD1).map(({ deletedAt, ...row }) => ({ ...row, deletedAt: deletedAt !== null })))
    expect(is.edits).toEqual(was.edits)
    expect(is.events).toEqual(was.events)
    expect(is.events).toHaveLength(3)
    expect(is.blobs).toEqual(was.blobs)
    expect(Buffer.compare((await getBlob(to.database, hashOf(roads))).bytes, roads)).toBe(0)
  })

  test('that is here already is left as it is, and says so', async () => {
    const archive = await readArchive(await archiveOf(from.database, 'D1'))
    const before = await everything(from.database)
    expect(await restoreArchive(from.database, archive)).toMatchObject({ outcome: 'already-here', districtId: 'D1' })
    expect(await everything(from.database)).toEqual(before)
  })

  test('over a district at another state is refused and changes nothing; as a copy it stands beside it', async () => {
    await createDocument(to.database, district())
    const archive = await readArchive(await archiveOf(from.database, 'D1'))
    const before = await everything(to.database)
    await expect(restoreArchive(to.database, archive)).rejects.toMatchObject({ code: 'archive-here', status: 409 })
    expect(await everything(to.database)).toEqual(before)

    const copied = await restoreArchive(to.database, archive, { asCopy: true })
    expect(copied).toMatchObject({ outcome: 'copied', name: 'Alder Hollow East (copy)', planCount: 1 })
    expect(copied.districtId).not.toBe('D1')
    const copy = await getDocument(to.database, copied.districtId)
    expect(copy).toMatchObject({ sequence: 3, doc: { id: copied.districtId, sources: [{ usable_gal: 5000 }, {}] } })
    expect((await listEdits(to.database, copied.districtId, 0)).map(({ sequence }) => sequence)).toEqual([1, 2, 3])
    const [planEntry] = await listDocuments(to.database, { kind: 'plan', districtId: copied.districtId })
    expect(planEntry).toMatchObject({ name: 'Barn by the mill', sequence: 1 })
    // The copy goes on as a document of its own: its history can be added to.
    await appendEdits(to.database, copied.districtId, [edit('later', 3, rename('Elder Hollow'), copied.districtId)])
    expect(await getDocument(to.database, 'D1')).toMatchObject({ sequence: 0 })
    const [logEntry] = await listDocuments(to.database, { kind: 'log', districtId: copied.districtId })
    const { events } = await listSiteEvents(to.database, logEntry!.id, 0)
    expect(events.map(({ logId, kind }) => [logId, kind])).toEqual([[logEntry!.id, 'arrived'], [logEntry!.id, 'arrived'], [logEntry!.id, 'flow']])
    expect(events[1]!.replaces).toBe(events[0]!.id)
    expect(events[0]!.id).not.toBe(siteEvent(1).id)
  })

  test('with fewer events of a log than are here is no longer the same, and leaves what is here', async () => {
    const archive = await readArchive(await archiveOf(from.database, 'D1'))
    await restoreArchive(to.database, archive)
    await addSiteEvents(to.database, 'L1', [siteEvent(4)])
    await expect(restoreArchive(to.database, archive)).rejects.toMatchObject({ code: 'archive-here' })
    expect((await listSiteEvents(to.database, 'L1', 0)).total).toBe(4)
  })

  test('a failure on the way leaves nothing behind', async () => {
    const archive = await readArchive(await archiveOf(from.database, 'D1'))
    const broken = { ...archive, data: [{ ...archive.data[0]!, bytes: () => { throw new Error('the disk is full') } }] }
    await expect(restoreArchive(to.database, broken)).rejects.toThrow('the disk is full')
    expect(await everything(to.database)).toEqual({ documents: [], edits: [], blobs: [], events: [] })
  })

  test('says which data was not there when it was made', async () => {
    const hash = '0'.repeat(64)
    await createDocument(to.database, { ...district(), roads: { hash, name: 'r', attribution: 'a', importedOn: '2026-01-01' } })
    const archive = await readArchive(await archiveOf(to.database, 'D1'))
    expect(archive.manifest.missing).toEqual([{ kind: 'roads', hash }])
  })

  test('of a district that is not here, or deleted, is refused', async () => {
    await expect(archiveOf(from.database, 'none')).rejects.toMatchObject({ code: 'not-found' })
    await expect(archiveOf(from.database, 'P1')).rejects.toMatchObject({ code: 'not-found' })
    await createDocument(to.database, district())
    await softDelete(to.database, 'D1')
    await expect(archiveOf(to.database, 'D1')).rejects.toMatchObject({ code: 'deleted' })
  })
})

describe('a file that is not as it should be is refused before anything is stored:', () => {
  type Parts = Record<string, Uint8Array>
  type Manifest = { version: number; format: string; parts: { name: string; kind: string; size: number; sha256: string }[]; missing: unknown[] }
  const json = (value: unknown) => new TextEncoder().encode(JSON.stringify(value))
  const read = (parts: Parts, name: string): never => JSON.parse(new TextDecoder().decode(parts[name])) as never

  /** The good archive, changed, and where asked its list of parts made to agree. */
  async function changed(change: (parts: Parts, manifest: Manifest) => void, agrees = true): Promise<Uint8Array> {
    const parts: Parts = unzipSync(await archiveOf(from.database, 'D1'))
    const manifest: Manifest = read(parts, 'manifest.json')
    change(parts, manifest)
    if (agrees) for (const part of manifest.parts) if (parts[part.name]) { part.size = parts[part.name]!.byteLength; part.sha256 = hashOf(parts[part.name]!) }
    if (parts['manifest.json']) parts['manifest.json'] = json(manifest)
    return zipSync(parts)
  }
  const asIs = (parts: Parts, name: string, into: string) => { parts[into] = parts[name]!; delete parts[name] }

  test.each<[string, string, (parts: Parts, manifest: Manifest) => void, boolean?]>([
    ['no list of parts', 'archive-no-manifest', (parts) => { delete parts['manifest.json'] }],
    ['another format', 'archive-no-manifest', (_parts, manifest) => { manifest.format = 'other' }],
    ['a newer version', 'archive-newer', (_parts, manifest) => { manifest.version = 2 }],
    ['a part missing', 'archive-part-missing', (parts) => { delete parts['plans/1.json'] }],
    ['a part nobody names', 'archive-part-extra', (parts) => { parts['../../etc/extra'] = json({}) }],
    ['a part named twice', 'archive-part-twice', (_parts, manifest) => { manifest.parts.push({ ...manifest.parts[0]! }) }],
    ['a byte changed', 'archive-part-damaged', (parts) => { parts['district.json']![10]! ^= 1 }, false],
    ['a part longer than it says', 'archive-part-damaged', (parts) => { parts['district.json'] = new Uint8Array([...parts['district.json']!, 32]) }, false],
    ['a name that climbs out', 'archive-part-wrong', (parts, manifest) => { asIs(parts, 'plans/1.json', '../plans/1.json'); manifest.parts[1]!.name = '../plans/1.json' }],
    ['data under another name', 'archive-part-damaged', (parts, manifest) => { const part = manifest.parts.at(-1)!; asIs(parts, part.name, `blobs/${'a'.repeat(64)}`); part.name = `blobs/${'a'.repeat(64)}` }],
    ['a document that its schema refuses', 'archive-part-wrong', (parts) => { const one: { doc: { sources: { kind: string }[] } } = read(parts, 'district.json'); one.doc.sources[0]!.kind = 'puddle'; parts['district.json'] = json(one) }],
    ['an edit that its schema refuses', 'archive-part-wrong', (parts) => { const one: { edits: { body: { kind: string } }[] } = read(parts, 'district.json'); one.edits[0]!.body.kind = 'erase'; parts['district.json'] = json(one) }],
    ['a gap in the history', 'archive-history', (parts) => { const one: { edits: unknown[] } = read(parts, 'district.json'); one.edits.pop(); parts['district.json'] = json(one) }],
    ['a gap in the events of a log', 'archive-events', (parts) => { const one: { events: unknown[] } = read(parts, 'logs/3.json'); one.events.shift(); parts['logs/3.json'] = json(one) }],
    ['an event of another log', 'archive-events', (parts) => { const one: { events: { event: { logId: string } }[] } = read(parts, 'logs/3.json'); one.events[0]!.event.logId = 'L2'; parts['logs/3.json'] = json(one) }],
    ['an event that its schema refuses', 'archive-part-wrong', (parts) => { const one: { events: { event: { kind: string } }[] } = read(parts, 'logs/3.json'); one.events[0]!.event.kind = 'vanished'; parts['logs/3.json'] = json(one) }],
    ['events of a plan', 'archive-events', (parts) => { const one: { events: unknown[] } = read(parts, 'plans/1.json'); one.events = []; parts['plans/1.json'] = json(one) }],
    ['a plan of another district', 'archive-apart', (parts) => { const one: { doc: { districtId: string } } = read(parts, 'plans/1.json'); one.doc.districtId = 'D2'; parts['plans/1.json'] = json(one) }],
    ['the same edit twice', 'archive-apart', (parts) => { const one: { edits: { id: string }[] } = read(parts, 'district.json'); one.edits[1]!.id = one.edits[0]!.id; parts['district.json'] = json(one) }],
    ['data the district does not name', 'archive-apart', (parts) => { const one: { doc: { roads?: unknown } } = read(parts, 'district.json'); delete one.doc.roads; parts['district.json'] = json(one) }],
  ])('%s', async (_what, code, change, agrees = true) => {
    await expect(readArchive(await changed(change, agrees))).rejects.toMatchObject({ code, sentence: expect.stringMatching(/^[A-Z].+\.$/) as unknown })
  })

  test('no zip file, and one cut short', async () => {
    const whole = await archiveOf(from.database, 'D1')
    await expect(readArchive(randomBytes(5000))).rejects.toMatchObject({ code: 'archive-not-zip' })
    await expect(readArchive(new Uint8Array())).rejects.toMatchObject({ code: 'archive-not-zip' })
    for (const share of [0.2, 0.5, 0.99]) await expect(readArchive(whole.subarray(0, whole.length * share))).rejects.toMatchObject({ status: 422 })
  })

  test('any single byte changed is found, or changes nothing', async () => {
    const whole = await archiveOf(from.database, 'D1')
    const good = await readArchive(whole)
    const content = (archive: typeof good) => JSON.stringify([archive.manifest.parts, archive.district, archive.plans])
    for (let at = 0; at < whole.length; at += 997) {
      const damaged = whole.slice()
      damaged[at]! ^= 0x41
      const read = await readArchive(damaged).catch((error: { status?: number }) => error)
      if ('manifest' in read) expect(content(read)).toBe(content(good))
      else expect(read.status).toBeGreaterThanOrEqual(400)
    }
  })

  test('a file that would unpack to more than the limit, whatever its directory says', async () => {
    // Offset 24 of an entry of the directory is its unpacked size (ZIP application note, section 4.3.12; from memory).
    const claiming = (zip: Uint8Array, size: number) => {
      const view = new DataView(zip.buffer)
      for (let at = 0; at + 28 < zip.length; at += 1) if (view.getUint32(at, true) === 0x02014b50) view.setUint32(at + 24, size, true)
      return zip
    }
    const bomb = zipSync(Object.fromEntries(Array.from({ length: 9 }, (_, at) => [`blobs/${at}`, new Uint8Array(1000)])))
    await expect(readArchive(claiming(bomb, 64 * 1024 * 1024))).rejects.toMatchObject({ code: 'archive-too-large', status: 413 })
    // The directory claims a byte for what unpacks to 8 MB: no more than the byte is ever kept.
    const lying = claiming(zipSync({ 'manifest.json': new Uint8Array(8 * 1024 * 1024) }), 1)
    await expect(readArchive(lying)).rejects.toMatchObject({ status: 422 })
  })
})

describe('the demo district, saved and brought into an empty install by the command line', () => {
  const run = promisify(execFile)
  const archive = (folder: string, ...args: string[]) =>
    run(process.execPath, ['scripts/archive.mjs', ...args], { cwd: root, env: { ...process.env, MILLRACE_DATA: folder } })
  const failureOf = async (folder: string, ...args: string[]) => {
    const error = await archive(folder, ...args).catch((caught: unknown) => caught as { code: number; stderr: string })
    return 'code' in error ? [error.code, error.stderr] : ['it was expected to fail']
  }

  /** The answer of every plan, from nothing but what the database holds. */
  async function answers(database: Database) {
    const stored = (await getDocument(database, 'ostrel-valley')).doc as unknown as District
    const graph = decodeRoadGraph((await getBlob(database, stored.roads!.hash)).bytes) as RoadGraph
    const plans = await listDocuments(database, { kind: 'plan', districtId: 'ostrel-valley' })
    return Promise.all(plans.map(({ id }) => id).sort().map(async (id) => {
      const bundle = bundleFromDocuments(stored, (await getDocument(database, id)).doc as unknown as Plan)
      return evaluatePlan({ ...bundle, legs: resolveLegs(bundle, legFinder(graph, stored.roadNotes)).legs })
    }))
  }

  test('gives identical answers for every plan', async () => {
    const demo = makeFolder()
    to = await scratchDatabase()
    await prepareDatabase(demo)
    const { openDatabase } = await import('@/app/_server/open-database')
    await run(process.execPath, ['--import', 'tsx', path.join(root, 'app/_cli/seed-demo.ts')], { cwd: root, env: { ...process.env, MILLRACE_DATA: demo } })
    const file = path.join(demo, 'valley.millrace.zip')
    expect((await archive(demo, 'save', 'ostrel-valley', file)).stdout).toMatch(/3 plans/)
    expect(existsSync(`${file}.part`)).toBe(false)
    expect((await archive(demo, 'verify', file)).stdout).toMatch(/is whole/)
    expect((await archive(demo, 'list')).stdout).toMatch(/^ostrel-valley\t.+\t3 plans\n$/)
    expect(await failureOf(demo, 'save', 'ostrel-valley', file)).toEqual([2, expect.stringMatching(/already there/)])

    expect((await archive(to.folder, 'restore', file)).stdout).toMatch(/3 plans/)
    const original = await openDatabase(path.join(demo, 'millrace.db'))
    const [before, after] = [await answers(original), await answers(to.database)]
    await original.$disconnect()
    expect(before).toHaveLength(3)
    expect(before.every(({ sustainable_gpm }) => sustainable_gpm! > 0)).toBe(true)
    expect(after).toEqual(before)
    expect((await archive(to.folder, 'restore', file)).stdout).toMatch(/already here/)
    expect((await archive(to.folder, 'restore', '--copy', file)).stdout).toMatch(/\(copy\)/)

    const damaged = readFileSync(file)
    damaged[Math.floor(damaged.length / 2)]! ^= 0xff
    writeFileSync(file, damaged)
    expect(await failureOf(to.folder, 'restore', file)).toEqual([2, expect.stringMatching(/^The part .+ is damaged[^\n]+\n$/)])
    expect(await failureOf(to.folder, 'restore', path.join(demo, 'none.zip'))).toEqual([2, 'none.zip cannot be read: ENOENT\n'])
    expect(await failureOf(to.folder, 'restore')).toEqual([2, expect.stringMatching(/^Use one of/)])
    await to.remove()
    rmSync(demo, { recursive: true, force: true })
  }, 240_000)
})
