import { formatShare, say } from '../_text'
import { Button } from './button'
import { joinClasses } from './join-classes'
import styles from './progress-bar.module.css'

export type ProgressBarProps = {
  label: string
  /** Part done, 0 to 1; absent while it cannot be said. */
  share?: number | undefined
  onCancel?: () => void
}

/** How far a long job is, and the way to stop it. */
export function ProgressBar({ label, share, onCancel }: ProgressBarProps) {
  const done = share === undefined ? undefined : Math.min(1, Math.max(0, share))
  return (
    <div className={joinClasses(styles.row, onCancel && styles.stoppable)}>
      <span className={styles.label}>{done === undefined ? label : say('kit.progress', { label, share: formatShare(done) })}</span>
      <span className={styles.onPaper}>{say('kit.progress.on-paper')}</span>
      <progress className={styles.bar} aria-label={label} max={1} {...(done !== undefined && { value: done })} />
      {onCancel && <Button look="quiet" size="s" icon="close" label={say('kit.cancel')} onClick={onCancel} />}
    </div>
  )
}
