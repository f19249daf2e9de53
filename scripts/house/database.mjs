/** The database file: checked before it is used, migrated, checked again; set aside only when asked to. */
import { existsSync, mkdirSync, renameSync, rmSync } from 'node:fs'
import path from 'node:path'
import { backupFolderOf } from './backup-names.mjs'
import { listBackups } from './backups.mjs'
import { connect, hasShapeOf, listMigrations } from './migrations.mjs'
import { inRoot, root, urlOfFile } from './places.mjs'
import { runNode } from './run.mjs'
import { PlainError, sayProgress } from './say.mjs'

const SIDE_FILES = ['-wal', '-shm']

/** How the file is called in a sentence: short if it is inside the project. */
const shown = (file) => (file.startsWith(root + path.sep) ? path.relative(root, file) : file)

const stampOfNow = () => new Date().toISOString().slice(0, 19).replaceAll(':', '-')

/**
 * Renames a database and its side files to a dated name; nothing is deleted.
 *
 * @returns the new name, or undefined if there was no file
 */
export function setAsideDatabase(file) {
  const aside = file.replace(/\.db$/, `-set-aside-${stampOfNow()}.db`)
  const found = ['', ...SIDE_FILES].filter((end) => existsSync(file + end))
  for (const end of found) renameSync(file + end, aside + end)
  return found.length > 0 ? aside : undefined
}

async function unreadable(file, reason) {
  const [newest] = await listBackups(backupFolderOf(file))
  const backup = newest ? `the newest backup, ${shown(newest.path)},` : 'a backup'
  return new PlainError(
    `The database file ${shown(file)} cannot be read (${reason}); it was left as it is. Put ${backup} in its place, ` +
      'or keep it under another name and begin with an empty database: npm start -- --set-aside-database',
  )
}

const reasonOf = (error) => String(error?.cause?.originalMessage ?? error?.message ?? error).replace(/^SQLITE_[A-Z_]+: /, '')

/** Opens the file and reads it through once, so that damage is met here and not in the middle of an edit. */
async function openChecked(file) {
  let database
  try {
    database = await connect(urlOfFile(file))
    const [[verdict]] = await database.rows('PRAGMA quick_check(1)')
    if (verdict !== 'ok') throw new Error(String(verdict))
    return database
  } catch (error) {
    await database?.close()
    throw await unreadable(file, reasonOf(error))
  }
}

async function readHistory(database) {
  const [[count]] = await database.rows("SELECT count(*) FROM sqlite_schema WHERE name = '_prisma_migrations'")
  if (Number(count) === 0) return []
  const rows = await database.rows(
    'SELECT migration_name, finished_at FROM _prisma_migrations WHERE rolled_back_at IS NULL ORDER BY migration_name',
  )
  return rows.map(([name, finished]) => ({ name, isFinished: finished !== null }))
}

/** What stands in the way of migrating, as a sentence. */
function findObstacle(file, history, migrations) {
  const failed = history.find(({ isFinished }) => !isFinished)
  if (failed) {
    return `An update of the database ${shown(file)} was interrupted (${failed.name}): put back the copy made before it, ` +
      'which lies beside it, and start again.'
  }
  const known = new Set(migrations.map(({ name }) => name))
  const foreign = history.find(({ name }) => !known.has(name))
  if (foreign) {
    return `The database ${shown(file)} was made by a newer Millrace (${foreign.name}): update Millrace, or choose ` +
      'another folder with MILLRACE_DATA.'
  }
  return undefined
}

/** In a process of its own, whose end lets the file go for certain; only then can it be renamed. */
async function applyMigrations(file) {
  const { code, output } = await runNode([inRoot('scripts/apply-migrations.mjs'), file], { quiet: true })
  if (code !== 0) throw new PlainError(`The database ${shown(file)} could not be brought up to date.`, output)
}

/** A new file gets its name only when it is whole, so an interrupted start leaves nothing half made. */
async function makeDatabase(file) {
  sayProgress(`Making the database ${shown(file)}`)
  const draft = `${file}.new`
  for (const end of ['', '-journal', ...SIDE_FILES]) rmSync(draft + end, { force: true })
  await applyMigrations(draft)
  renameSync(draft, file)
}

async function updateDatabase(file, database) {
  sayProgress(`Updating the database ${shown(file)}`)
  await database.rows(`VACUUM INTO '${`${file}-before-${stampOfNow()}.db`.replaceAll("'", "''")}'`)
  await applyMigrations(file)
}

/**
 * Makes the file if there is none, brings it to the newest shape and checks that it has it. A file
 * about to be updated is first copied beside itself.
 *
 * @throws PlainError if the file is damaged, from a newer version, or does not end in the right shape
 */
export async function migrateDatabase(file) {
  mkdirSync(path.dirname(file), { recursive: true })
  if (!existsSync(file)) {
    const aside = setAsideDatabase(file)
    if (aside) sayProgress(`There was no ${shown(file)} but a leftover beside it, kept as ${shown(aside)}-wal`)
    await makeDatabase(file)
  }
  const migrations = listMigrations()
  const database = await openChecked(file)
  try {
    const history = await readHistory(database)
    const obstacle = findObstacle(file, history, migrations)
    if (obstacle) throw new PlainError(obstacle)
    if (history.length < migrations.length) await updateDatabase(file, database)
    if (!(await hasShapeOf(database, migrations))) {
      throw new PlainError(`The tables in ${shown(file)} are not the ones Millrace makes; it was left as it is.`)
    }
    await database.rows('PRAGMA journal_mode = WAL')
  } finally {
    await database.close()
  }
}

/** True if no document was ever saved in it, deleted ones counted. */
export async function isDatabaseEmpty(file) {
  const database = await connect(urlOfFile(file))
  try {
    const [[count]] = await database.rows('SELECT count(*) FROM Document')
    return Number(count) === 0
  } finally {
    await database.close()
  }
}
