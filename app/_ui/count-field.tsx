'use client'

import { useId } from 'react'
import { formatNumber, say } from '../_text'
import entry from './entry.module.css'
import { FieldRow } from './field-row'
import { joinClasses } from './join-classes'
import { useEntry } from './use-entry'

export type CountFieldProps = {
  label: string
  value: number | undefined
  min?: number
  max?: number
  /** What is used while nobody has said. */
  standIn?: number
  hint?: string
  isDisabled?: boolean
  onCommit: (value: number | undefined) => void
}

/** Entry of a whole number of things. */
export function CountField({ label, value, min = 0, max = 99, standIn, hint, isDisabled = false, onCommit }: CountFieldProps) {
  const id = useId()
  const { error, input } = useEntry((typed) => {
    const text = typed.trim()
    const count = text === '' ? undefined : Number(text)
    if (count !== undefined && !(/^\d+$/.test(text) && count >= min && count <= max)) {
      return say('entry.not-a-count', { field: label, text, min: formatNumber(min), max: formatNumber(max) })
    }
    if (count !== value) onCommit(count)
    return undefined
  })
  return (
    <FieldRow label={label} htmlFor={id} hint={hint} hintId={`${id}-hint`} error={error} errorId={`${id}-error`}>
      <span className={entry.box} data-wrong={error !== undefined}>
        <input
          id={id}
          className={joinClasses(entry.input, entry.number)}
          inputMode="numeric"
          autoComplete="off"
          disabled={isDisabled}
          aria-describedby={[hint && `${id}-hint`, error && `${id}-error`].filter(Boolean).join(' ') || undefined}
          placeholder={standIn === undefined ? say('entry.none') : formatNumber(standIn)}
          {...input(value === undefined ? '' : String(value))}
        />
      </span>
    </FieldRow>
  )
}
