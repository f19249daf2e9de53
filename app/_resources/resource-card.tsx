'use client'

import { memo, type ReactNode } from 'react'
import { useHeadInView } from '../_fields/use-head-in-view'
import { Card } from '../_ui/card'
import styles from './resources.module.css'

/** Between one figure of a card and the next. */
export const BETWEEN = ' · '

export type ResourceCardProps = {
  id: string
  name: string
  text: string
  /** Its main figures, as one text, so that two are soon compared. */
  figures: string
  attention: string | undefined
  isOpen: boolean
  /** Opens a card by its id; undefined closes it. */
  onOpen: (id: string | undefined) => void
  /** What it shows when it is open. */
  children: ReactNode
}

/** One vehicle, piece of equipment or station: its main figures in a line. Drawn anew only when something of its own has changed. */
export const ResourceCard = memo(function ResourceCard({ id, name, text, figures, attention, isOpen, onOpen, children }: ResourceCardProps) {
  const holder = useHeadInView(isOpen)
  return (
    <div ref={holder} className={styles.resource}>
      <Card
        title={name} isOpen={isOpen} onToggle={(open) => { onOpen(open ? id : undefined) }}
        summary={<>{text}{attention && <span className={styles.attention}> · {attention}</span>}{figures && <span className={styles.figuresBelow}> · {figures}</span>}</>}
        aside={<span className={styles.figures}>{figures && figures.split(BETWEEN).map((figure) => <span key={figure} className={styles.figure}>{figure}</span>)}</span>}
      >
        {children}
      </Card>
    </div>
  )
})
