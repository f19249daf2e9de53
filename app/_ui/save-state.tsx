import { Icon } from '../_look/icon'
import type { IconName } from '../_look/icon'
import { say } from '../_text'
import styles from './save-state.module.css'

export type SaveStateProps = {
  state: 'saved' | 'away' | 'saving' | 'waiting' | 'unkept' | 'unsettled' | 'refused'
  /** Changes the words speak of: those the server has not got yet, or those to be settled. */
  count?: number
}

const icons: Readonly<Record<SaveStateProps['state'], IconName>> = { saved: 'check', away: 'note', saving: 'arrowRight', waiting: 'note', unkept: 'warn', unsettled: 'warn', refused: 'warn' }

/** Whether what was done is kept, in words. */
export function SaveState({ state, count = 0 }: SaveStateProps) {
  const words = say(`shell.save.${state}`, { count })
  return (
    <span className={styles.state} data-state={state} role="status" title={say(`shell.save.${state}.where`)}>
      <Icon name={icons[state]} size={14} />
      <span>{words}</span>
    </span>
  )
}
