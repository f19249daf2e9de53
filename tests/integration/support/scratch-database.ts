import { execFile } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { promisify } from 'node:util'
import { openDatabase, type Database } from '@/app/_server/open-database'

const run = promisify(execFile)

export const root = path.resolve(import.meta.dirname, '../../..')

export type Scratch = { folder: string; file: string; database: Database; remove(): Promise<void> }

export const makeFolder = (): string => mkdtempSync(path.join(tmpdir(), 'millrace-test-'))

/** Makes or updates the database in a folder, the way `npm start` does; rejects with what it said. */
export const prepareDatabase = (folder: string): Promise<{ stdout: string; stderr: string }> =>
  run(process.execPath, ['scripts/make-database.mjs'], { cwd: root, env: { ...process.env, MILLRACE_DATA: folder } })

/** A real database file in a folder of its own, as the server opens it. */
export async function scratchDatabase(): Promise<Scratch> {
  const folder = makeFolder()
  await prepareDatabase(folder)
  const file = path.join(folder, 'millrace.db')
  const database = await openDatabase(file)
  const remove = async () => {
    await database.$disconnect()
    rmSync(folder, { recursive: true, force: true })
  }
  return { folder, file, database, remove }
}
