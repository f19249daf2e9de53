import { createWriteStream, existsSync } from 'node:fs'
import { open, readFile, rename, rm, stat } from 'node:fs/promises'
import { basename, dirname } from 'node:path'
import { pipeline } from 'node:stream/promises'
import { parseArgs } from 'node:util'
import { gatherArchive } from '@/app/_server/archive/gather-archive'
import { packArchive } from '@/app/_server/archive/pack-archive'
import { readArchive, type Archive } from '@/app/_server/archive/read-archive'
import { restoreArchive } from '@/app/_server/archive/restore-archive'
import { listDocuments } from '@/app/_server/documents'
import { ARCHIVE_LIMIT_MB } from '@/app/_server/limits'
import { databaseFile, openDatabase, type Database } from '@/app/_server/open-database'
import { Refusal } from '@/app/_server/refusal'
import { formatDay, formatNumber, listWords, say } from '@/app/_text'
import '@/app/_text/areas/archive'
import '@/app/_text/areas/home'
import { documentKindOf } from '@/lib/plan'
import { backupFolderOf } from '@/scripts/house/backup-names.mjs'
import { listBackups } from '@/scripts/house/backups.mjs'

/**
 * Archives of districts, and the backups of the database.
 *
 *   npm run -s archive -- save DISTRICT FILE     one file that holds the district whole
 *   npm run -s archive -- list                   the districts here
 *   npm run -s archive -- verify FILE            checks every part, stores nothing
 *   npm run -s archive -- restore FILE [--copy]  all of it or nothing
 *   npm run -s archive -- backups                newest first
 *
 * Exit 0: done. Exit 2: not done, and one sentence on standard error says why.
 */
class BadInput extends Error {}

const BYTES_PER_MB = 1024 * 1024
const print = (line: string): void => void process.stdout.write(`${line}\n`)
const file = process.env.MILLRACE_DATABASE ?? databaseFile()
const reasonOf = (error: unknown): string => (error as NodeJS.ErrnoException).code ?? String(error)

async function withDatabase<T>(work: (database: Database) => Promise<T>): Promise<T> {
  const database = await openDatabase(file)
  try {
    return await work(database)
  } finally {
    await database.$disconnect()
  }
}

async function archiveFrom(name: string): Promise<Archive> {
  const unreadable = (error: unknown) => new BadInput(say('archive.cli.unreadable', { file: basename(name), reason: reasonOf(error) }))
  const { size } = await stat(name).catch((error: unknown) => { throw unreadable(error) })
  if (size > ARCHIVE_LIMIT_MB * BYTES_PER_MB) throw new BadInput(say('archive.too-big', { file: basename(name), limit_MB: ARCHIVE_LIMIT_MB }))
  return readArchive(await readFile(name).catch((error: unknown) => { throw unreadable(error) }))
}

async function districtId(database: Database, given: string): Promise<string> {
  const districts = await listDocuments(database, { kind: 'district' })
  const found = districts.filter(({ id }) => id === given)
  const named = found.length > 0 ? found : districts.filter(({ name }) => name === given)
  if (named.length > 1) throw new BadInput(say('archive.cli.two-districts', { district: given }))
  if (!named[0]) throw new BadInput(say('archive.cli.no-district', { district: given }))
  return named[0].id
}

/** Written under another name, and given its own only when it is whole and on the disk. */
async function save(given: string, target: string): Promise<void> {
  if (existsSync(target)) throw new BadInput(say('archive.cli.exists', { file: target }))
  const draft = `${target}.part`
  await withDatabase(async (database) => {
    const gathered = await gatherArchive(database, await districtId(database, given), new Date())
    try {
      await pipeline(packArchive(gathered), createWriteStream(draft, { flags: 'w', flush: true }))
      await rename(draft, target)
      const folder = await open(dirname(target) || '.')
      await folder.sync().catch(() => undefined).finally(() => folder.close())
    } catch (error) {
      await rm(draft, { force: true })
      throw error instanceof Refusal ? error : new BadInput(say('archive.cli.unwritable', { file: basename(target), reason: reasonOf(error) }))
    }
    const { size } = await stat(target)
    const { district, parts } = gathered.manifest
    const count = parts.filter(({ kind }) => kind === 'plan').length
    print(say('archive.cli.saved', { name: district.name, file: target, size: formatNumber(size / BYTES_PER_MB, 1), count }))
    printMissing(gathered.manifest.missing.map(({ kind }) => kind))
  })
}

function printMissing(kinds: readonly string[]): void {
  if (kinds.length > 0) print(say('archive.missing', { kinds: listWords(kinds) }))
}

async function list(): Promise<void> {
  const entries = await withDatabase((database) => listDocuments(database))
  const districts = entries.filter(({ kind }) => kind === 'district')
  if (districts.length === 0) print(say('archive.cli.no-districts'))
  for (const { id, name } of districts) print(`${id}\t${name}\t${say('home.plans', { count: entries.filter((entry) => entry.kind === 'plan' && entry.districtId === id).length })}`)
}

async function verify(name: string): Promise<void> {
  const { manifest, district, plans } = await archiveFrom(name)
  const edits = [district, ...plans].reduce((sum, one) => sum + one.edits.length, 0)
  print(say('archive.cli.verified', { file: basename(name), name: manifest.district.name, count: plans.filter(({ doc }) => documentKindOf(doc) === 'plan').length, edits, day: formatDay(manifest.madeAt) }))
  printMissing(manifest.missing.map(({ kind }) => kind))
}

async function restore(name: string, asCopy: boolean): Promise<void> {
  const archive = await archiveFrom(name)
  const restored = await withDatabase((database) => restoreArchive(database, archive, { asCopy }))
  print(say(`archive.${restored.outcome}`, { name: restored.name, count: restored.planCount }))
  printMissing(restored.missing)
}

async function backups(): Promise<void> {
  const found = await listBackups(backupFolderOf(file))
  if (found.length === 0) print(say('archive.cli.no-backups'))
  for (const { path, size } of found) print(`${path}\t${formatNumber(size / BYTES_PER_MB, 1)} MB`)
}

async function main(): Promise<void> {
  const { values, positionals } = parseArgs({ allowPositionals: true, options: { copy: { type: 'boolean' } } })
  const [command, first, second, ...rest] = positionals
  const usage = new BadInput(say('archive.cli.usage'))
  if (rest.length > 0 || (values.copy && command !== 'restore')) throw usage
  if (command === 'save' && first !== undefined && second !== undefined) return save(first, second)
  if (command === 'list' && first === undefined) return list()
  if (command === 'verify' && first !== undefined && second === undefined) return verify(first)
  if (command === 'restore' && first !== undefined && second === undefined) return restore(first, values.copy === true)
  if (command === 'backups' && first === undefined) return backups()
  throw usage
}

main().catch((error: Error & { code?: string }) => {
  const isPlain = error instanceof BadInput || error instanceof Refusal || error.code?.startsWith('ERR_PARSE_ARGS')
  if (!isPlain) throw error
  process.stderr.write(`${(error instanceof Refusal ? error.sentence : error.message).split('\n')[0]}\n`)
  process.exitCode = 2
})
