'use client'

import { useId } from 'react'
import { Icon } from '../_look/icon'
import { say } from '../_text'
import entry from './entry.module.css'
import { joinClasses } from './join-classes'
import styles from './search-box.module.css'

export type SearchBoxProps = { label: string; value: string; onChange: (value: string) => void; placeholder?: string; foundCount?: number }

/** Narrows a list while one types; Escape clears it. */
export function SearchBox({ label, value, onChange, placeholder, foundCount }: SearchBoxProps) {
  const id = useId()
  return (
    <div className={styles.search}>
      <label className={styles.label} htmlFor={id}>{label}</label>
      <span className={joinClasses(entry.box, styles.box)}>
        <span className={styles.sign}><Icon name="search" /></span>
        <input
          id={id}
          className={entry.input}
          type="search"
          autoComplete="off"
          placeholder={placeholder}
          value={value}
          onChange={(event) => { onChange(event.target.value) }}
          onKeyDown={(event) => { if (event.key === 'Escape') onChange('') }}
        />
        <span className={entry.unit} aria-live="polite">{value !== '' && foundCount !== undefined && say('kit.search.count', { count: foundCount })}</span>
      </span>
    </div>
  )
}
