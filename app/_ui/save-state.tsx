import { Icon } from '../_look/icon'
import type { IconName } from '../_look/icon'
import { say } from '../_text'
import styles from './save-state.module.css'

export type SaveStateProps = {
  state: 'saved' | 'saving' | 'waiting' | 'refused'
  /** Changes that the server has not got yet. */
  unsentCount?: number
}

const icons: Readonly<Record<SaveStateProps['state'], IconName>> = { saved: 'check', saving: 'arrowRight', waiting: 'note', refused: 'warn' }

/** Whether what was done is kept, in words. */
export function SaveState({ state, unsentCount = 0 }: SaveStateProps) {
  const words = state === 'saved' ? say('shell.save.saved')
    : state === 'saving' ? say('shell.save.saving')
      : state === 'waiting' ? say('shell.save.waiting', { count: unsentCount })
        : say('shell.save.failed')
  return (
    <span className={styles.state} data-state={state} role="status">
      <Icon name={icons[state]} size={14} />
      <span className={styles.words}>{words}</span>
    </span>
  )
}
