'use client'

import styles from './check-field.module.css'

export type CheckFieldProps = { label: string; hint?: string; isChecked: boolean; isDisabled?: boolean; onCommit: (isChecked: boolean) => void }

/** Yes or no. */
export function CheckField({ label, hint, isChecked, isDisabled = false, onCommit }: CheckFieldProps) {
  return (
    <label className={styles.row}>
      <input type="checkbox" checked={isChecked} disabled={isDisabled} onChange={(event) => { onCommit(event.target.checked) }} />
      <span>
        <span className={styles.label}>{label}</span>
        {hint && <span className={styles.hint}>{hint}</span>}
      </span>
    </label>
  )
}
