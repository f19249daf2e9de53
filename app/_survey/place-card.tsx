'use client'

import { memo, type ReactNode } from 'react'
import { useHeadInView } from '../_fields/use-head-in-view'
import { Card } from '../_ui/card'
import type { PlaceSummary } from './place-summary'
import styles from './survey.module.css'

export type PlaceCardProps = PlaceSummary & {
  id: string
  name: string
  isOpen: boolean
  onSelect: (id: string | undefined) => void
  /** What it shows when it is open. */
  children: ReactNode
}

/** One place of the survey: what is known of it in a line. Drawn anew only when something of its own has changed. */
export const PlaceCard = memo(function PlaceCard({ id, name, text, attention, isOpen, onSelect, children }: PlaceCardProps) {
  const holder = useHeadInView(isOpen)
  return (
    <div ref={holder} className={styles.placeCard} data-place={id}>
      <Card
        title={name}
        summary={<>{text}{text && attention && ' · '}{attention && <span className={styles.attention}>{attention}</span>}</>}
        isOpen={isOpen}
        onToggle={(open) => { onSelect(open ? id : undefined) }}
      >
        {children}
      </Card>
    </div>
  )
})
