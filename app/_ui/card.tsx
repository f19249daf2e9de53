'use client'

import { Activity, useId, useState } from 'react'
import type { ReactNode } from 'react'
import { Icon } from '../_look/icon'
import styles from './card.module.css'
import { joinClasses } from './join-classes'

export type CardProps = {
  /** For whoever leads here from elsewhere on the screen. */
  id?: string
  title: string
  /** What the closed card says about its content, in a line. */
  summary?: ReactNode
  /** A symbol before the title. */
  symbol?: ReactNode
  /** At the right end of the head: a figure, a mark, a count of issues. */
  aside?: ReactNode
  /** Edge on the left: the limiting link has amber, an issue that blocks has danger. */
  edge?: 'amber' | 'danger'
  startsOpen?: boolean
  /** With these the parent decides what is open. */
  isOpen?: boolean
  onToggle?: (isOpen: boolean) => void
  level?: 2 | 3 | 4
  /** On paper: open whatever the screen shows, or left out. Absent: as on the screen. */
  onPaper?: 'open' | 'never'
  children: ReactNode
}

/**
 * A card that opens in place. Its content is drawn when it first opens; closed again it keeps what was typed and opened in
 * it, and is drawn anew only when all that can be seen has been.
 */
export function Card({ id, title, summary, symbol, aside, edge, startsOpen = false, isOpen, onToggle, level = 3, onPaper, children }: CardProps) {
  const [ownOpen, setOwnOpen] = useState(startsOpen)
  const bodyId = useId()
  const open = isOpen ?? ownOpen
  const [hasOpened, setHasOpened] = useState(open)
  if (open && !hasOpened) setHasOpened(true)
  const Heading = `h${level}` as const
  const toggle = (): void => {
    setOwnOpen(!open)
    onToggle?.(!open)
  }
  return (
    <section id={id} className={joinClasses(styles.card, open && styles.open, edge && styles[edge], onPaper === 'open' && styles.paperOpen, onPaper === 'never' && styles.paperNever)}>
      <Heading className={styles.head}>
        <button type="button" className={styles.toggle} aria-expanded={open} aria-controls={bodyId} onClick={toggle}>
          {symbol && <span className={styles.symbol}>{symbol}</span>}
          <span className={styles.words}>
            <span className={styles.title}>{title}</span>
            {summary && <span className={styles.summary}>{summary}</span>}
          </span>
          {aside && <span className={styles.aside}>{aside}</span>}
          <span className={styles.chevron}><Icon name="chevron" size={14} /></span>
        </button>
      </Heading>
      <div id={bodyId} className={styles.body} hidden={!open}>
        {onPaper === 'open' ? children : hasOpened && <Activity mode={open ? 'visible' : 'hidden'}>{children}</Activity>}
      </div>
    </section>
  )
}
