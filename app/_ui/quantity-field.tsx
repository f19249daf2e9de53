'use client'

import { useId, useState } from 'react'
import type { KeyboardEvent } from 'react'
import type { Evidence } from '@/lib/evidence'
import type { Unit } from '@/lib/units'
import { entrySymbol, entryText, formatQuantity, say } from '../_text'
import entry from './entry.module.css'
import { EvidenceChip } from './evidence-chip'
import { EvidenceMark } from './evidence-mark'
import { FieldRow } from './field-row'
import { joinClasses } from './join-classes'
import { outcomeOf, shownEntry } from './quantity-draft'
import type { StoredQuantity } from './quantity-draft'
import { useUnitSystem } from './unit-system-context'

export type QuantityFieldProps = {
  label: string
  unit: Unit
  /** Absent: nobody has said. */
  value: number | undefined
  evidence?: Evidence | undefined
  /** What is used while nobody has said; shown in the empty field. */
  standIn?: { readonly value: number; readonly mark: 'computed' | 'handbook' | 'assumed'; readonly source?: string } | undefined
  min?: number
  max?: number
  isRequired?: boolean
  isDisabled?: boolean
  hint?: string
  /** False for figures that need no evidence, such as a wished flow. */
  hasMark?: boolean
  newEvidence?: Evidence
  /** Enter and leaving the field; never called with what was refused, nor when nothing changed. */
  onCommit: (stored: StoredQuantity) => void
}

/** Entry of one quantity: in the units in use or any other that is typed, with how it is known. */
export function QuantityField(props: QuantityFieldProps) {
  const { label, unit, value, evidence, standIn, min, max, isRequired, isDisabled = false, hint, hasMark = true, newEvidence, onCommit } = props
  const [system] = useUnitSystem()
  const [draft, setDraft] = useState<string>()
  const [error, setError] = useState<string>()
  const id = useId()
  const stored: StoredQuantity = { value, evidence }
  const shown = shownEntry(stored, unit, system)

  const commit = (): void => {
    if (draft === undefined) return
    const outcome = outcomeOf(draft, stored, { field: label, unit, system, min, max, isRequired, newEvidence })
    if (outcome.kind === 'refused') {
      setError(outcome.sentence)
      return
    }
    setDraft(undefined)
    setError(undefined)
    if (outcome.kind === 'changed') onCommit(outcome.stored)
  }
  const onKeyDown = (event: KeyboardEvent): void => {
    if (event.key === 'Enter') commit()
    if (event.key === 'Escape' && draft !== undefined) {
      event.stopPropagation()
      setDraft(undefined)
      setError(undefined)
    }
  }

  const isOtherUnit = value !== undefined && shown.hasOwnUnit && draft === undefined && shown.text.replace(/\s/g, '') !== formatQuantity(value, unit, system).replace(/\s/g, '')
  const inUnits = isOtherUnit ? `= ${formatQuantity(value, unit, system)}` : undefined
  const lines = [inUnits, hint].filter((line) => line !== undefined).join(' · ')
  const described = [lines && `${id}-hint`, error && `${id}-error`].filter(Boolean).join(' ')
  const mark = value !== undefined
    ? <EvidenceMark field={label} evidence={evidence} isDisabled={isDisabled} onChange={(next) => { onCommit({ value, evidence: next }) }} />
    : standIn && <EvidenceChip mark={standIn.mark} title={standIn.source} />

  return (
    <FieldRow label={label} htmlFor={id} hint={lines} hintId={`${id}-hint`} error={error} errorId={`${id}-error`} mark={hasMark && mark}>
      <span className={entry.box} data-wrong={error !== undefined}>
        <input
          id={id}
          className={joinClasses(entry.input, entry.number)}
          inputMode="text"
          autoComplete="off"
          spellCheck={false}
          disabled={isDisabled}
          required={isRequired}
          aria-invalid={error !== undefined}
          aria-describedby={described || undefined}
          placeholder={standIn ? entryText(standIn.value, unit, system) : say('entry.none')}
          value={draft ?? shown.text}
          onChange={(event) => { setDraft(event.target.value) }}
          onBlur={commit}
          onKeyDown={onKeyDown}
        />
        {!(draft === undefined && shown.hasOwnUnit) && <span className={entry.unit} aria-hidden="true">{entrySymbol(unit, system)}</span>}
      </span>
    </FieldRow>
  )
}
