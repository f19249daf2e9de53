'use client'

import { useRef } from 'react'
import type { KeyboardEvent } from 'react'
import { SiteSymbol } from '../_look/site-symbol'
import type { SiteKind } from '../_look/site-shapes'
import { say } from '../_text'
import styles from './object-list.module.css'

export type ObjectEntry = {
  readonly id: string
  readonly name: string
  readonly kind?: SiteKind
  readonly letter?: string
  readonly detail?: string
  /** At the right: a figure. */
  readonly figure?: string
  /** In words, why it needs a look. */
  readonly attention?: string
}

export type ObjectListProps = {
  label: string
  items: readonly ObjectEntry[]
  selectedId: string | undefined
  onSelect: (id: string) => void
  /** Points at an item, so that the map can show it; undefined when no longer. */
  onPoint?: (id: string | undefined) => void
  empty?: string
}

/** What the map shows, as a list beside it: every item can be reached by keyboard. Arrows move, Enter chooses. */
export function ObjectList({ label, items, selectedId, onSelect, onPoint, empty }: ObjectListProps) {
  const list = useRef<HTMLUListElement>(null)
  if (items.length === 0) return <p className={styles.empty}>{empty ?? say('kit.list.empty')}</p>

  const startId = items.some(({ id }) => id === selectedId) ? selectedId : items[0]?.id
  const onKeyDown = (event: KeyboardEvent): void => {
    const buttons = [...(list.current?.querySelectorAll('button') ?? [])]
    const at = buttons.findIndex((button) => button === document.activeElement)
    const to = { ArrowDown: at + 1, ArrowUp: at - 1, Home: 0, End: buttons.length - 1 }[event.key]
    if (at < 0 || to === undefined) return
    event.preventDefault()
    buttons[Math.min(Math.max(to, 0), buttons.length - 1)]?.focus()
  }
  return (
    <ul ref={list} className={styles.list} aria-label={label} onKeyDown={onKeyDown}>
      {items.map(({ id, name, kind, letter, detail, figure, attention }) => (
        <li key={id}>
          <button
            type="button"
            className={styles.item}
            tabIndex={id === startId ? 0 : -1}
            aria-current={id === selectedId ? 'true' : undefined}
            onClick={() => { onSelect(id) }}
            onFocus={() => { onPoint?.(id) }}
            onBlur={() => { onPoint?.(undefined) }}
            onMouseEnter={() => { onPoint?.(id) }}
            onMouseLeave={() => { onPoint?.(undefined) }}
          >
            {kind && <SiteSymbol kind={kind} size={22} {...(letter !== undefined && { letter })} />}
            <span className={styles.words}>
              <span className={styles.name}>{name}</span>
              {detail && <span className={styles.detail}>{detail}</span>}
              {attention && <span className={styles.attention}>{attention}</span>}
            </span>
            {figure && <span className={styles.figure}>{figure}</span>}
          </button>
        </li>
      ))}
    </ul>
  )
}
