import type { ReactNode } from 'react'
import { Icon } from '../_look/icon'
import styles from './field-row.module.css'
import { joinClasses } from './join-classes'

export type FieldRowProps = {
  label: string
  /** Id of the control that the label names. */
  htmlFor: string
  /** A line under the field: what is meant, or the value in the unit in use. */
  hint?: ReactNode
  hintId?: string
  error?: string | undefined
  errorId?: string
  /** At the right: the evidence mark. */
  mark?: ReactNode
  /** Under the entry while it is typed in: how the figure is known. */
  ask?: ReactNode
  /** Wide entries stand under their label. */
  isWide?: boolean
  /** The entry takes the place of the mark too. */
  isSpanning?: boolean
  children: ReactNode
}

/** Label, entry, mark; the sentence of an error under them. */
export function FieldRow({ label, htmlFor, hint, hintId, error, errorId, mark, ask, isWide = false, isSpanning = false, children }: FieldRowProps) {
  return (
    <div className={joinClasses(styles.row, isWide && styles.wide, isSpanning && styles.spanning)}>
      <label className={styles.label} htmlFor={htmlFor}>{label}</label>
      <div className={styles.entry}>{children}</div>
      {mark && <div className={styles.mark}>{mark}</div>}
      {ask}
      {hint && <p className={styles.hint} id={hintId}>{hint}</p>}
      {error && <p className={styles.error} id={errorId} role="alert"><Icon name="warn" size={14} /><span>{error}</span></p>}
    </div>
  )
}
