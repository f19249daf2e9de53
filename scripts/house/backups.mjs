/**
 * Backups of the live database: one a day, in the folder `backups` beside it. Seven days and four weeks are kept.
 *
 * Each is made by SQLite itself (VACUUM INTO, from one read transaction: one moment of the database, whoever writes
 * meanwhile), in a process of its own so that serving never waits; it gets its name only when it is whole and on disk.
 */
import { spawn } from 'node:child_process'
import { mkdir, readdir, rm, stat } from 'node:fs/promises'
import path from 'node:path'
import { backupFolderOf, backupName, backupTime, DAY_ms, keptNames } from './backup-names.mjs'
import { inRoot } from './places.mjs'

/** Those there are, newest first. */
export async function listBackups(folder) {
  const names = await readdir(folder).catch(() => [])
  const found = names.filter(backupTime).sort().reverse()
  return Promise.all(found.map(async (name) => ({ path: path.join(folder, name), name, madeAt: backupTime(name), size: (await stat(path.join(folder, name))).size })))
}

function copyInOwnProcess(file, target) {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [inRoot('scripts/copy-database.mjs'), file, target], { stdio: ['ignore', 'ignore', 'pipe'] })
    let said = ''
    child.stderr.on('data', (part) => (said += part))
    child.on('error', reject)
    child.on('close', (code) => (code === 0 ? resolve() : reject(new Error(said.trim().split('\n').at(-1) || `the copy ended with code ${code}`))))
  })
}

/**
 * Makes a backup and takes away those no longer kept.
 *
 * @returns its path
 * @throws Error whose message is the reason; whatever was half written is gone
 */
export async function makeBackup(file, now = new Date()) {
  const folder = backupFolderOf(file)
  await mkdir(folder, { recursive: true })
  for (const name of await readdir(folder)) if (/\.part(-journal)?$/.test(name)) await rm(path.join(folder, name), { force: true })
  const target = path.join(folder, backupName(now))
  try {
    await copyInOwnProcess(file, target)
  } catch (error) {
    for (const end of ['', '-journal']) await rm(`${target}.part${end}`, { force: true }).catch(() => undefined)
    throw error
  }
  const names = await readdir(folder)
  const kept = keptNames(names)
  for (const name of names) if (backupTime(name) && !kept.has(name)) await rm(path.join(folder, name), { force: true })
  return target
}

/** True if the newest is a day old or there is none. One from the future, by a clock that was set back, does not count. */
export async function isBackupDue(file, now = new Date()) {
  const found = (await listBackups(backupFolderOf(file))).find(({ madeAt }) => madeAt <= now)
  return !found || now - found.madeAt >= DAY_ms
}
