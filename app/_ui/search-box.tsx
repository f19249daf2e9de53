'use client'

import { useId, useState } from 'react'
import { Icon } from '../_look/icon'
import { say } from '../_text'
import entry from './entry.module.css'
import { joinClasses } from './join-classes'
import styles from './search-box.module.css'
import { useAfterPaint } from './use-after-paint'

export type SearchBoxProps = {
  label: string
  /** What is looked for when the box appears. */
  search: string
  /** Told what to look for when its last letter is on the screen. */
  onSearch: (text: string) => void
  placeholder?: string
  foundCount?: number
}

/** Narrows a list while one types; Escape clears it. */
export function SearchBox({ label, search, onSearch, placeholder, foundCount }: SearchBoxProps) {
  const id = useId()
  const [typed, setTyped] = useState(search)
  const afterPaint = useAfterPaint()
  const look = (text: string) => {
    setTyped(text)
    afterPaint(() => { onSearch(text) })
  }
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
          value={typed}
          onChange={(event) => { look(event.target.value) }}
          onKeyDown={(event) => { if (event.key === 'Escape') look('') }}
        />
        <span className={entry.unit} aria-live="polite">{typed !== '' && foundCount !== undefined && say('kit.search.count', { count: foundCount })}</span>
      </span>
    </div>
  )
}
