/**
 * Copies a database that may be in use to a file of its own, checked, on disk, and only then under its name.
 *
 *   node scripts/copy-database.mjs FILE TARGET
 */
import { closeSync, fsyncSync, openSync, renameSync, rmSync, statfsSync, statSync } from 'node:fs'
import path from 'node:path'
import { connect } from './house/migrations.mjs'
import { urlOfFile } from './house/places.mjs'

const [file, target] = process.argv.slice(2).map((name) => path.resolve(name))
const draft = `${target}.part`

function syncToDisk(name, mode) {
  const handle = openSync(name, mode)
  try {
    fsyncSync(handle)
  } finally {
    closeSync(handle)
  }
}

async function copy() {
  rmSync(draft, { force: true })
  const database = await connect(urlOfFile(file))
  try {
    await database.rows(`VACUUM INTO '${draft.replaceAll("'", "''")}'`)
  } finally {
    await database.close()
  }
  const made = await connect(urlOfFile(draft))
  try {
    const [[verdict]] = await made.rows('PRAGMA quick_check(1)')
    if (verdict !== 'ok') throw new Error(String(verdict))
  } finally {
    await made.close()
  }
  syncToDisk(draft, 'r+')
  renameSync(draft, target)
  // The name too has to be on disk; some systems cannot open a folder.
  try {
    syncToDisk(path.dirname(target), 'r')
  } catch (error) {
    if (!['EISDIR', 'EPERM', 'EACCES', 'EINVAL'].includes(error.code)) throw error
  }
}

/** SQLite does not always name a full disk as such. */
function isOutOfSpace() {
  try {
    const { bavail, bsize } = statfsSync(path.dirname(target))
    return bavail * bsize < statSync(file).size
  } catch {
    return false
  }
}

try {
  await copy()
} catch (error) {
  const reason = String(error?.cause?.originalMessage ?? error?.message ?? error).replace(/\s+/g, ' ')
  process.stderr.write(`${isOutOfSpace() ? 'ENOSPC: no space left on the disk; ' : ''}${reason}\n`)
  process.exitCode = 1
}
