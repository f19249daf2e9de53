'use client'

import { useId } from 'react'
import type { Evidence } from '@/lib/evidence'
import type { Unit } from '@/lib/units'
import { entrySymbol, entryText, formatQuantity, say } from '../_text'
import entry from './entry.module.css'
import { EvidenceAsk } from './evidence-ask'
import { EvidenceChip } from './evidence-chip'
import { EvidenceMark } from './evidence-mark'
import { FieldRow } from './field-row'
import { joinClasses } from './join-classes'
import { markOfDraft, outcomeOf, shownEntry } from './quantity-draft'
import type { StoredQuantity } from './quantity-draft'
import type { StandIn } from './typed-evidence'
import { useUnitSystem } from './unit-system-context'
import { useEntry } from './use-entry'
import { useMarkSaying } from './usual-mark'

export type QuantityFieldProps = {
  label: string
  unit: Unit
  /** Absent: nobody has said. */
  value: number | undefined
  evidence?: Evidence | undefined
  /** What is used while nobody has said; shown in the empty field. */
  standIn?: StandIn | undefined
  /** Said in the empty field where nothing entered means something else than that nobody knows. */
  absent?: string | undefined
  min?: number
  max?: number
  isRequired?: boolean
  isDisabled?: boolean
  hint?: string
  /** False for figures that need no evidence, such as a wished flow. */
  hasMark?: boolean
  /** Enter and leaving the field; never called with what was refused, nor when nothing changed. */
  onCommit: (stored: StoredQuantity) => void
}

/** Entry of one quantity: in the units in use or any other that is typed, with how it is known. */
export function QuantityField(props: QuantityFieldProps) {
  const { label, unit, value, evidence, standIn, absent = say('entry.none'), min, max, isRequired, isDisabled = false, hint, hasMark = true, onCommit } = props
  const [system] = useUnitSystem()
  const id = useId()
  const stored: StoredQuantity = { value, evidence }
  const shown = shownEntry(stored, unit, system)
  const marks = useMarkSaying()

  const { draft, error, input } = useEntry((text) => {
    const outcome = outcomeOf(text, stored, { field: label, unit, system, min, max, isRequired, standIn, said: marks })
    if (outcome.kind === 'refused') return outcome.sentence
    if (outcome.kind === 'changed') onCommit(outcome.stored)
    return undefined
  })

  const isOtherUnit = value !== undefined && shown.hasOwnUnit && draft === undefined && shown.text.replace(/\s/g, '') !== formatQuantity(value, unit, system).replace(/\s/g, '')
  const inUnits = isOtherUnit ? `= ${formatQuantity(value, unit, system)}` : undefined
  const lines = [inUnits, hint].filter((line) => line !== undefined).join(' · ')
  const described = [lines && `${id}-hint`, error && `${id}-error`].filter(Boolean).join(' ')
  const isTyping = hasMark && draft !== undefined && draft.trim() !== ''
  const saidNow = isTyping ? markOfDraft(draft, stored, { unit, system, standIn, said: marks }) : undefined
  const mark = isTyping
    ? <EvidenceChip mark={saidNow ?? 'assumed'} isLive />
    : value !== undefined
    ? <EvidenceMark field={label} evidence={evidence} isDisabled={isDisabled} onChange={(next) => { onCommit({ value, evidence: next }) }} />
    : standIn && <EvidenceChip mark={standIn.mark} title={standIn.source} />

  const entryProps = input(shown.text)

  return (
    <FieldRow label={label} htmlFor={id} hint={lines} hintId={`${id}-hint`} error={error} errorId={`${id}-error`} mark={hasMark && mark} ask={hasMark && <EvidenceAsk field={label} isOn={isTyping} mark={saidNow} onChoose={marks.choose} />}>
      <span className={entry.box} data-wrong={error !== undefined}>
        <input
          id={id}
          className={joinClasses(entry.input, entry.number)}
          inputMode="text"
          autoComplete="off"
          spellCheck={false}
          disabled={isDisabled}
          required={isRequired}
          aria-describedby={described || undefined}
          onFocus={marks.begin}
          placeholder={standIn ? entryText(standIn.value, unit, system) : absent}
          {...entryProps}
          onKeyDown={(event) => { entryProps.onKeyDown(event); if (isTyping) marks.onKeyDown(event, saidNow) }}
        />
        {!(draft === undefined && shown.hasOwnUnit) && <span className={entry.unit} aria-hidden="true">{entrySymbol(unit, system)}</span>}
      </span>
    </FieldRow>
  )
}
