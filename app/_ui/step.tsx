import type { ReactNode } from 'react'
import { Icon } from '../_look/icon'
import styles from './steps.module.css'

export type StepProps = {
  isDone: boolean
  /** Said after it in quiet words: how far it is. */
  state?: string | undefined
  children: ReactNode
}

/** One thing of a list of things to do, ticked off when it is done. */
export function Step({ isDone, state, children }: StepProps) {
  return (
    <li className={styles.step} data-done={isDone}>
      <span className={styles.tick}>{isDone && <Icon name="check" size={14} />}</span>
      <span>{children}{state !== undefined && <> <span className={styles.state}>{state}</span></>}</span>
    </li>
  )
}
