'use client'

import { useId } from 'react'
import type { Unit } from '@/lib/units'
import { formatQuantity, say } from '../_text'
import '../_text/areas/draft'
import { QuantityField } from '../_ui/quantity-field'
import { useUnitSystem } from '../_ui/unit-system-context'
import styles from './draft.module.css'

export type TryFieldProps = {
  label: string
  unit: Unit
  /** What is tried; absent: what is known. */
  value: number | undefined
  known: number
  min: number
  max: number
  step: number
  hint?: string
  onTry: (value: number | undefined) => void
}

/** A figure to try out, typed or by a slider; emptied, the known one stands again. */
export function TryField({ label, unit, value, known, min, max, step, hint, onTry }: TryFieldProps) {
  const [system] = useUnitSystem()
  const id = useId()
  const shown = value ?? known
  return (
    <div className={styles.try}>
      <QuantityField label={label} unit={unit} value={value} hasMark={false} standIn={{ value: known, mark: 'computed' }} min={min} max={max} {...(hint !== undefined && { hint })} onCommit={(stored) => { onTry(stored.value) }} />
      <input
        id={id} type="range" className={styles.range} aria-label={say('draft.slide', { field: label })} aria-valuetext={formatQuantity(shown, unit, system)}
        min={min} max={max} step={step} value={Math.min(max, Math.max(min, shown))} onChange={(event) => { onTry(Number(event.target.value)) }}
      />
    </div>
  )
}
