import { execFile, spawn } from 'node:child_process'
import { once } from 'node:events'
import { existsSync, mkdirSync, readdirSync, rmSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import { promisify } from 'node:util'
import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { createDocument, getDocument } from '@/app/_server/documents'
import { appendEdits, listEdits } from '@/app/_server/edits'
import { openDatabase } from '@/app/_server/open-database'
import { backupFolderOf, backupName, backupTime, DAY_ms, isFull, keptNames } from '@/scripts/house/backup-names.mjs'
import { startBackups } from '@/scripts/house/backup-schedule.mjs'
import { isBackupDue, listBackups, makeBackup } from '@/scripts/house/backups.mjs'
import { district, edit, rename } from './support/documents'
import { prepareDatabase, root, scratchDatabase, type Scratch } from './support/scratch-database'

const daysFrom = (first: string, count: number): string[] => Array.from({ length: count }, (_, day) => backupName(new Date(Date.parse(first) + day * DAY_ms)))

describe('of the backups', () => {
  // 2026-03-02 is a Monday (ISO 8601: weeks begin on Monday).
  test('the newest of seven days and of four weeks are kept', () => {
    const kept = [...keptNames(daysFrom('2026-02-01T08:00:00Z', 36))].map((name) => name.slice(9, 19)).sort()
    expect(kept).toEqual(['2026-02-15', '2026-02-22', '2026-03-01', '2026-03-02', '2026-03-03', '2026-03-04', '2026-03-05', '2026-03-06', '2026-03-07', '2026-03-08'])
  })

  test('days without one do not count against the others', () => {
    const names = ['2026-01-05T08:00:00Z', '2026-02-02T08:00:00Z', '2026-05-04T08:00:00Z'].map((when) => backupName(new Date(when)))
    expect(keptNames(names)).toEqual(new Set(names))
  })

  test('the newest of a day stands for it', () => {
    const names = Array.from({ length: 10 }, (_, hour) => backupName(new Date(Date.UTC(2026, 0, 5, hour))))
    expect(keptNames(names)).toEqual(new Set([names[9]]))
  })

  test('no other file counts as one', () => {
    expect(['millrace.db', 'notes.txt', 'millrace-2026-01-05T08-00-00Z.db.part', 'millrace-2026-01-05T08-00-00Z.db-wal'].map(backupTime)).toEqual([undefined, undefined, undefined, undefined])
    expect(backupTime('millrace-2026-01-05T08-00-09Z.db')).toEqual(new Date('2026-01-05T08:00:09Z'))
  })
})

describe('a backup of a real file', () => {
  let scratch: Scratch
  let folder: string
  beforeEach(async () => {
    scratch = await scratchDatabase()
    folder = backupFolderOf(scratch.file)
    await createDocument(scratch.database, district())
  })
  afterEach(() => scratch.remove())

  test('made again and again while edits are written is each time one whole moment, and the writer never fails', async () => {
    let isWriting = true
    let written = 0
    const writer = (async () => {
      while (isWriting) {
        written = (await appendEdits(scratch.database, 'D1', [edit(`w-${written}`, written, rename(`Hollow ${written + 1}`))])).sequence
        // The driver answers within the same turn: without this nothing else here would get one.
        await new Promise((resolve) => setImmediate(resolve))
      }
    })()
    const made: string[] = []
    for (let day = 0; day < 4; day += 1) made.push(await makeBackup(scratch.file, new Date(Date.UTC(2026, 0, 5 + day))))
    isWriting = false
    await writer
    expect(written).toBeGreaterThan(4)
    let last = 0
    for (const file of made) {
      const backup = await openDatabase(file)
      expect(await backup.$queryRaw`PRAGMA integrity_check`).toEqual([{ integrity_check: 'ok' }])
      const { sequence, doc } = await getDocument(backup, 'D1')
      expect((await listEdits(backup, 'D1', 0)).length).toBe(sequence)
      if (sequence > 0) expect(doc.name).toBe(`Hollow ${sequence}`)
      expect(sequence).toBeGreaterThanOrEqual(last)
      last = sequence
      await backup.$disconnect()
    }
    expect(last).toBeGreaterThan(0)
    expect(last).toBeLessThanOrEqual(written)
  })

  test('put in the place of the database is served as it was', async () => {
    await appendEdits(scratch.database, 'D1', [edit('one', 0, rename('Before'))])
    const backup = await makeBackup(scratch.file)
    await appendEdits(scratch.database, 'D1', [edit('two', 1, rename('After'))])
    const other = await scratchDatabase()
    await other.database.$disconnect()
    for (const end of ['', '-wal', '-shm']) rmSync(other.file + end, { force: true })
    await promisify(execFile)('cp', [backup, other.file])
    await prepareDatabase(other.folder)
    const again = await openDatabase(other.file)
    expect(await getDocument(again, 'D1')).toMatchObject({ sequence: 1, doc: { name: 'Before' } })
    await again.$disconnect()
    await other.remove()
  })

  test('takes the place of those no longer kept, and touches no other file', async () => {
    mkdirSync(folder)
    for (const name of [...daysFrom('2026-02-01T08:00:00Z', 35), 'my own notes.db']) writeFileSync(path.join(folder, name), '')
    await makeBackup(scratch.file, new Date('2026-03-08T08:00:00Z'))
    const names = readdirSync(folder)
    expect(names).toHaveLength(11)
    expect(names).toContain('my own notes.db')
    expect((await listBackups(folder))[0]?.name).toBe('millrace-2026-03-08T08-00-00Z.db')
  })

  test('that was killed half-way is not taken for one, and is cleared away by the next', async () => {
    mkdirSync(folder)
    const target = path.join(folder, backupName(new Date('2026-01-05T08:00:00Z')))
    const child = spawn(process.execPath, ['scripts/copy-database.mjs', scratch.file, target], { cwd: root })
    child.kill('SIGKILL')
    await once(child, 'exit')
    writeFileSync(`${target}.part`, 'half')
    expect(await listBackups(folder)).toEqual([])
    expect(await isBackupDue(scratch.file)).toBe(true)
    await makeBackup(scratch.file, new Date('2026-01-05T09:00:00Z'))
    expect(readdirSync(folder)).toEqual(['millrace-2026-01-05T09-00-00Z.db'])
  })

  test('is due when the newest is a day old', async () => {
    const now = new Date('2026-01-05T08:00:00Z')
    expect(await isBackupDue(scratch.file, now)).toBe(true)
    await makeBackup(scratch.file, now)
    expect(await isBackupDue(scratch.file, new Date(now.getTime() + DAY_ms - 1000))).toBe(false)
    expect(await isBackupDue(scratch.file, new Date(now.getTime() + DAY_ms))).toBe(true)
    expect(await isBackupDue(scratch.file, new Date(now.getTime() - DAY_ms))).toBe(true)
  })

  test('that cannot be written is told in one sentence, kept for the page, and tried again', async () => {
    writeFileSync(folder, 'a file stands where the folder should be')
    const said: string[] = []
    const backups = startBackups(scratch.file, { say: (line) => said.push(line) })
    await backups.look()
    await backups.look()
    expect(said).toHaveLength(1)
    expect(said[0]).toMatch(/^The daily backup of the database could not be written .+\.$/)
    expect(backups.state.trouble).toMatchObject({ isFull: false })
    rmSync(folder)
    await backups.look()
    expect(backups.state.trouble).toBeUndefined()
    expect(await listBackups(folder)).toHaveLength(1)
    backups.stop()
  })

  test('on a full disk says so', async () => {
    const said: string[] = []
    const full = async (): Promise<string> => { throw new Error('SQLITE_FULL: database or disk is full') }
    const backups = startBackups(scratch.file, { say: (line) => said.push(line), make: full })
    await backups.look()
    expect(backups.state.trouble?.isFull).toBe(true)
    expect(said[0]).toMatch(/the disk is full/)
    expect(isFull('ENOSPC: no space left on device, fsync')).toBe(true)
    backups.stop()
  })

  test('is named by the sentence that a damaged database is met with', async () => {
    const backup = await makeBackup(scratch.file)
    await scratch.database.$disconnect()
    writeFileSync(scratch.file, 'this is no database '.repeat(500))
    const error = await prepareDatabase(scratch.folder).catch((caught: unknown) => caught as { stderr: string })
    expect(error.stderr).toContain(`Put the newest backup, ${backup}, in its place`)
    expect(existsSync(backup)).toBe(true)
  })
})
