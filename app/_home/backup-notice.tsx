import { findBackupTrouble } from '../_server/backup-trouble'
import { formatDay, say } from '../_text'
import '../_text/areas/archive'
import { Icon } from '../_look/icon'
import styles from './archive.module.css'

/** Says when the daily backup could not be made, and of when the newest is. */
export async function BackupNotice() {
  const trouble = await findBackupTrouble()
  if (!trouble) return null
  const last = trouble.lastMadeAt ? formatDay(trouble.lastMadeAt) : 'none'
  return (
    <p className={styles.failed} role="alert">
      <Icon name="warn" />
      <span>{trouble.isFull ? say('archive.backup.failed-full', { last }) : say('archive.backup.failed-other', { last, reason: trouble.reason })}</span>
    </p>
  )
}
