import type { ReactNode } from 'react'
import { Icon } from '../_look/icon'
import { say } from '../_text'
import styles from './figure-tile.module.css'
import { joinClasses } from './join-classes'

export type FigureTileProps = {
  label: string
  /** The figure with its unit, as shown. */
  value: string
  note?: string | undefined
  look?: 'plain' | 'water' | 'amber' | 'danger' | undefined
  /** An evidence mark or a state. */
  aside?: ReactNode
  isOpen?: boolean
  /** Id of the element that holds the working. */
  panelId?: string
  /** Without it the figure has no working to open. */
  onToggle?: (() => void) | undefined
}

/** A figure; as a button it opens its working. */
export function FigureTile({ label, value, note, look = 'plain', aside, isOpen = false, panelId, onToggle }: FigureTileProps) {
  const content = (
    <>
      <span className={styles.label}>{label}</span>
      <span className={styles.value}>{value}</span>
      {(note || aside) && <span className={styles.note}>{note}{aside}</span>}
    </>
  )
  const className = joinClasses(styles.tile, styles[look], isOpen && styles.open)
  if (!onToggle) return <div className={className}>{content}</div>
  return (
    <button type="button" className={joinClasses(className, styles.button)} aria-expanded={isOpen} aria-controls={panelId} title={say('working.open', { figure: label })} onClick={onToggle}>
      {content}
      <span className={styles.chevron}><Icon name="chevron" size={12} /></span>
    </button>
  )
}
