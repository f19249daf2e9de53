'use client'

import { useState, type ReactNode } from 'react'
import { Icon } from '../_look/icon'
import { say } from '../_text'
import styles from './fold.module.css'
import { joinClasses } from './join-classes'

export type FoldProps = {
  title: string
  /** What stands inside, in a line. */
  note?: string
  /** How much inside was entered; said on the closed fold, so that nothing set lies hidden. */
  setCount?: number
  startsOpen?: boolean
  /** On paper: open whatever the screen shows, or left out. Absent: as on the screen. */
  onPaper?: 'open' | 'never'
  children: ReactNode
}

/** Fields that few need, folded away inside a card. */
export function Fold({ title, note, setCount = 0, startsOpen = false, onPaper, children }: FoldProps) {
  const [isOpen, setOpen] = useState(startsOpen)
  return (
    <details className={joinClasses(styles.fold, onPaper === 'open' && styles.paperOpen, onPaper === 'never' && styles.paperNever)} open={isOpen} onToggle={(event) => { setOpen(event.currentTarget.open) }}>
      <summary className={styles.summary}>
        <span className={styles.words}>
          <span className={styles.title}>{title}</span>
          {note && <span className={styles.note}>{note}</span>}
        </span>
        {setCount > 0 && <span className={styles.count}>{say('kit.fold.set', { count: setCount })}</span>}
        <span className={styles.chevron}><Icon name="chevron" size={14} /></span>
      </summary>
      <div className={styles.body}>{children}</div>
    </details>
  )
}
