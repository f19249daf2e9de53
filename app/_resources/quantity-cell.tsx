'use client'

import { useId } from 'react'
import type { Unit } from '@/lib/units'
import { entryText, parseQuantity, say } from '../_text'
import entry from '../_ui/entry.module.css'
import { joinClasses } from '../_ui/join-classes'
import { useUnitSystem } from '../_ui/unit-system-context'
import { useEntry } from '../_ui/use-entry'
import styles from './point-table.module.css'

export type QuantityCellProps = {
  /** What the cell is, heard and named in refusals. */
  label: string
  unit: Unit
  value: number | undefined
  min: number
  max: number
  isRequired?: boolean
  /** What is used while the cell is empty. */
  standIn?: number
  onCommit: (value: number | undefined) => void
}

/** Entry of a quantity in a table whose head names the unit. */
export function QuantityCell({ label, unit, value, min, max, isRequired = false, standIn, onCommit }: QuantityCellProps) {
  const [system] = useUnitSystem()
  const id = useId()
  const shown = value === undefined ? '' : entryText(value, unit, system)
  const { error, input } = useEntry((text) => {
    const parsed = parseQuantity(text, unit, system, { field: label, min, max })
    if (parsed.kind === 'refused') return parsed.sentence
    if (parsed.kind === 'absent' && isRequired) return say('entry.required', { field: label })
    if (text.trim() !== shown) onCommit(parsed.kind === 'value' ? parsed.value : undefined)
    return undefined
  })
  return (
    <span className={styles.cell}>
      <span className={entry.box} data-wrong={error !== undefined}>
        <input
          className={joinClasses(entry.input, entry.number)}
          aria-label={label}
          aria-describedby={error && `${id}-error`}
          autoComplete="off"
          placeholder={standIn === undefined ? undefined : entryText(standIn, unit, system)}
          {...input(shown)}
        />
      </span>
      {error && <span className={styles.error} id={`${id}-error`} role="alert">{error}</span>}
    </span>
  )
}
