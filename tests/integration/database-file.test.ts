import { existsSync, openSync, readdirSync, readFileSync, rmSync, writeFileSync, writeSync, closeSync } from 'node:fs'
import path from 'node:path'
import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { openDatabase } from '@/app/_server/open-database'
import { createDocument, getDocument } from '@/app/_server/documents'
import { setAsideDatabase } from '@/scripts/house/database.mjs'
import { district } from './support/documents'
import { makeFolder, prepareDatabase } from './support/scratch-database'

let folder: string
let file: string
beforeEach(() => {
  folder = makeFolder()
  file = path.join(folder, 'millrace.db')
})
afterEach(() => rmSync(folder, { recursive: true, force: true }))

async function failureOf(work: Promise<unknown>): Promise<string> {
  const outcome: unknown = await work.then(() => undefined, (error: unknown) => error)
  if (outcome && typeof outcome === 'object' && 'stderr' in outcome) return String(outcome.stderr)
  throw new Error('it was expected to fail')
}

async function fill(): Promise<void> {
  await prepareDatabase(folder)
  const database = await openDatabase(file)
  await createDocument(database, district())
  await database.$disconnect()
}

test('a missing file is made, once; making it again changes nothing', async () => {
  await fill()
  await prepareDatabase(folder)
  const database = await openDatabase(file)
  expect(await getDocument(database, 'D1')).toMatchObject({ sequence: 0 })
  await database.$disconnect()
  expect(readdirSync(folder).filter((name) => name.endsWith('.new'))).toEqual([])
})

test('writes are on disk before they are acknowledged, and rows that are referred to are guarded', async () => {
  await prepareDatabase(folder)
  const database = await openDatabase(file)
  expect(await database.$queryRaw`PRAGMA journal_mode`).toEqual([{ journal_mode: 'wal' }])
  const [synchronous] = await database.$queryRaw<{ synchronous: bigint | number }[]>`PRAGMA synchronous`
  expect(Number(synchronous?.synchronous)).toBe(2)
  const [keys] = await database.$queryRaw<{ foreign_keys: bigint | number }[]>`PRAGMA foreign_keys`
  expect(Number(keys?.foreign_keys)).toBe(1)
  await database.$disconnect()
})

test('the server makes no database of its own where there is none', async () => {
  await expect(openDatabase(file)).rejects.toThrow(/no database/)
  expect(existsSync(file)).toBe(false)
})

describe('a file that cannot be read', () => {
  const WAY_BACK = 'npm start -- --set-aside-database'

  test('of another kind is refused in one sentence with a way back, and left as it is', async () => {
    writeFileSync(file, 'this is no database '.repeat(500))
    const before = readFileSync(file)
    const said = await failureOf(prepareDatabase(folder))
    expect(said.trim().split('\n')).toHaveLength(1)
    expect(said).toContain('cannot be read')
    expect(said).toContain(WAY_BACK)
    expect(readFileSync(file).equals(before)).toBe(true)
  })

  test('damaged in the middle is found at the start', async () => {
    await fill()
    const handle = openSync(file, 'r+')
    writeSync(handle, Buffer.alloc(8192, 0x5a), 0, 8192, 4096)
    closeSync(handle)
    expect(await failureOf(prepareDatabase(folder))).toContain(WAY_BACK)
  })

  test('is kept under a dated name when the user asks, and a new one is made', async () => {
    writeFileSync(file, 'this is no database '.repeat(500))
    writeFileSync(`${file}-wal`, 'its log')
    const before = readFileSync(file)
    const aside = setAsideDatabase(file)
    expect(path.basename(aside ?? '')).toMatch(/^millrace-set-aside-\d{4}-\d\d-\d\dT\d\d-\d\d-\d\d\.db$/)
    expect(readFileSync(aside ?? '').equals(before)).toBe(true)
    expect(readFileSync(`${aside ?? ''}-wal`, 'utf8')).toBe('its log')
    await prepareDatabase(folder)
    expect(existsSync(file)).toBe(true)
  })
})

test('a database of a newer version is refused and left as it is', async () => {
  await fill()
  const database = await openDatabase(file)
  await database.$executeRaw`INSERT INTO _prisma_migrations (id, checksum, migration_name, started_at, finished_at, applied_steps_count) VALUES ('x', 'x', '29990101000000_later', 1, 1, 1)`
  await database.$disconnect()
  expect(await failureOf(prepareDatabase(folder))).toMatch(/made by a newer Millrace/)
})

test('a database whose tables are not ours is refused', async () => {
  await fill()
  const database = await openDatabase(file)
  await database.$executeRaw`DROP TRIGGER "Edit_is_never_changed"`
  await database.$disconnect()
  expect(await failureOf(prepareDatabase(folder))).toMatch(/not the ones Millrace makes/)
})
