import { readdir } from 'node:fs/promises'
import { backupFolderOf, backupTime } from '@/scripts/house/backup-names.mjs'
import type { BackupState } from '@/scripts/house/backup-schedule.mjs'
import { databaseFile } from './open-database'

// Put on the global object by the server that this module runs in.
const held = globalThis as typeof globalThis & { millraceBackups?: BackupState }

/** Why the last daily backup could not be made and of when the newest is; undefined while all is well. */
export async function findBackupTrouble(): Promise<{ isFull: boolean; reason: string; lastMadeAt: string | undefined } | undefined> {
  const trouble = held.millraceBackups?.trouble
  if (!trouble) return undefined
  const names = await readdir(backupFolderOf(databaseFile())).catch(() => [])
  const newest = names.filter((name) => backupTime(name)).sort().at(-1)
  return { ...trouble, lastMadeAt: newest && backupTime(newest)?.toISOString() }
}
