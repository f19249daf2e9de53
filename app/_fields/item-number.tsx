'use client'

import { useId } from 'react'
import type { Default } from '@/lib/supply'
import { fieldLabel, formatNumber, say } from '../_text'
import entry from '../_ui/entry.module.css'
import { EvidenceAsk } from '../_ui/evidence-ask'
import { EvidenceChip } from '../_ui/evidence-chip'
import { EvidenceMark } from '../_ui/evidence-mark'
import { FieldRow } from '../_ui/field-row'
import { joinClasses } from '../_ui/join-classes'
import { saidMark, typedEvidence } from '../_ui/typed-evidence'
import { useEntry } from '../_ui/use-entry'
import { useMarkSaying } from '../_ui/usual-mark'
import { fieldRule } from './field-rule'
import { useItem } from './item-context'

export type ItemNumberProps = {
  field: string
  /** Shown and entered as a percentage of one. */
  isShare?: boolean
  standIn?: Pick<Default, 'value' | 'mark' | 'source'>
  hint?: string
}

/** A number of the item that has no unit, such as a share or a factor, with its evidence. */
export function ItemNumber({ field, isShare = false, standIn, hint }: ItemNumberProps) {
  const { docKind, collection, item, part, set } = useItem()
  const id = useId()
  const label = fieldLabel(field)
  const scale = isShare ? 100 : 1
  const { min = 0, max = Infinity } = fieldRule(docKind, collection, typeof item.kind === 'string' ? item.kind : undefined, field, part)
  const value = typeof item[field] === 'number' ? item[field] : undefined
  const evidence = item.evidence?.[field]
  const worded = (number: number) => formatNumber(number * scale, 3)

  const known = standIn && standIn.mark !== 'measured' ? standIn : undefined
  const marks = useMarkSaying()
  const { draft, error, input } = useEntry((typed) => {
    const text = typed.replace(/%/g, '').replace(/,/g, '').trim()
    const next = text === '' ? undefined : Number(text) / scale
    if (next !== undefined && !Number.isFinite(next)) return say('entry.not-a-number', { field: label, text, like: say('entry.like.number') })
    if (next !== undefined && (next < min || next > max)) return say('entry.out-of-range', { field: label, text, min: worded(min), max: worded(max) })
    if (next !== value) set({ [field]: next }, { [field]: next === undefined ? undefined : { ...typedEvidence(next, known, marks), entered: typed.trim() } })
    return undefined
  })
  const isTyping = draft !== undefined && draft.trim() !== ''
  const saidNow = isTyping ? saidMark(Number(draft.replace(/[%,]/g, '')) / scale, known, marks) : undefined
  const entryProps = input(value === undefined ? '' : worded(value))
  return (
    <FieldRow
      label={label} htmlFor={id} error={error} errorId={`${id}-error`} {...(hint !== undefined && { hint, hintId: `${id}-hint` })}
      ask={<EvidenceAsk field={label} isOn={isTyping} mark={saidNow} onChoose={marks.choose} />}
      mark={isTyping
        ? <EvidenceChip mark={saidNow ?? 'assumed'} isLive />
        : value === undefined
        ? known && <EvidenceChip mark={known.mark} title={known.source} />
        : <EvidenceMark field={label} evidence={evidence} onChange={(next) => { set({ [field]: value }, { [field]: next }) }} />}
    >
      <span className={entry.box} data-wrong={error !== undefined}>
        <input
          id={id}
          className={joinClasses(entry.input, entry.number)}
          inputMode="decimal"
          autoComplete="off"
          aria-describedby={[hint && `${id}-hint`, error && `${id}-error`].filter(Boolean).join(' ') || undefined}
          onFocus={marks.begin}
          placeholder={known ? worded(known.value) : say('entry.none')}
          {...entryProps}
          onKeyDown={(event) => { entryProps.onKeyDown(event); if (isTyping) marks.onKeyDown(event, saidNow) }}
        />
        {isShare && <span className={entry.unit} aria-hidden="true">%</span>}
      </span>
    </FieldRow>
  )
}
