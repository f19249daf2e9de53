'use client'

import { useId, useState } from 'react'
import type { EvidenceMark } from '@/lib/evidence'
import type { Working } from '@/lib/supply/working'
import { EvidenceChip } from './evidence-chip'
import { FigureTile } from './figure-tile'
import styles from './figure-group.module.css'
import { WorkingPanel } from './open-working'
import type { WorkingNames } from './working-panel'

export type FigureEntry = {
  readonly id: string
  readonly label: string
  /** The figure with its unit, as shown. */
  readonly value: string
  readonly note?: string
  readonly look?: 'plain' | 'water' | 'amber' | 'danger'
  readonly mark?: EvidenceMark
  /** Worked out when the figure is opened; undefined for one that has no working. */
  readonly getWorking?: () => Working | undefined
}

/** Figures side by side; the working of the one that is opened stands under them. */
export function FigureGroup({ label, figures, names }: { label: string; figures: readonly FigureEntry[]; names: WorkingNames }) {
  const [openId, setOpenId] = useState<string>()
  const panelId = useId()
  const open = figures.find(({ id }) => id === openId)
  const working = open?.getWorking?.()
  return (
    <div className={styles.group} role="group" aria-label={label}>
      <div className={styles.tiles}>
        {figures.map(({ id, label: name, value, note, look, mark, getWorking }) => (
          <FigureTile
            key={id}
            label={name}
            value={value}
            note={note}
            look={look}
            aside={mark && <EvidenceChip mark={mark} />}
            isOpen={id === openId && working !== undefined}
            panelId={panelId}
            onToggle={getWorking && (() => { setOpenId(id === openId ? undefined : id) })}
          />
        ))}
      </div>
      <div id={panelId}>
        {open && working && <WorkingPanel title={open.label} working={working} names={names} onClose={() => { setOpenId(undefined) }} />}
      </div>
    </div>
  )
}
