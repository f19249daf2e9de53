'use client'

import { useId } from 'react'
import type { Choice } from './choice-field'
import styles from './segments.module.css'

export type SegmentsProps<V extends string> = {
  label: string
  choices: readonly Choice<V>[]
  value: V
  onCommit: (value: V) => void
}

/** One of a few choices, all in sight. */
export function Segments<V extends string>({ label, choices, value, onCommit }: SegmentsProps<V>) {
  const name = useId()
  return (
    <fieldset>
      <legend className={styles.legend}>{label}</legend>
      <div className={styles.row}>
        {choices.map((choice) => (
          <label key={choice.value} className={styles.segment}>
            <input type="radio" name={name} value={choice.value} checked={choice.value === value} onChange={() => { onCommit(choice.value) }} />
            <span>{choice.label}</span>
          </label>
        ))}
      </div>
    </fieldset>
  )
}
