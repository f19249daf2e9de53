/** How backups are called, and which of them are kept: seven days and four weeks. */
import path from 'node:path'

export const DAY_ms = 24 * 60 * 60 * 1000
export const DAYS_KEPT = 7
export const WEEKS_KEPT = 4

const NAME = /^millrace-(\d{4})-(\d\d)-(\d\d)T(\d\d)-(\d\d)-(\d\d)Z\.db$/

export const backupFolderOf = (databaseFile) => path.join(path.dirname(databaseFile), 'backups')

export const backupName = (when) => `millrace-${when.toISOString().slice(0, 19).replaceAll(':', '-')}Z.db`

/** When a backup was made, from its name; undefined for any other name. */
export function backupTime(name) {
  const found = NAME.exec(name)
  if (!found) return undefined
  const [year, month, ...rest] = found.slice(1).map(Number)
  const time = new Date(Date.UTC(year, month - 1, ...rest))
  return Number.isNaN(time.getTime()) ? undefined : time
}

/** The day in whole days since 1970, and its week from Monday: 1 January 1970 was a Thursday. */
const dayOf = (time) => Math.floor(time.getTime() / DAY_ms)
const weekOf = (time) => Math.floor((dayOf(time) + 3) / 7)

/**
 * Names to keep: the newest of each of the last seven days that have one, and of each of the last four weeks that have
 * one. Days without one do not count, so a laptop that slept for a month loses nothing by it.
 */
export function keptNames(names) {
  const newestFirst = names.filter(backupTime).sort().reverse()
  const newestOf = (key, most) => {
    const found = new Map()
    for (const name of newestFirst) {
      const at = key(backupTime(name))
      if (!found.has(at) && found.size < most) found.set(at, name)
    }
    return found.values()
  }
  return new Set([...newestOf(dayOf, DAYS_KEPT), ...newestOf(weekOf, WEEKS_KEPT)])
}

/** A full disk, by what SQLite or the system says of it. */
export const isFull = (reason) => /SQLITE_FULL|database or disk is full|ENOSPC|no space left/i.test(reason)
