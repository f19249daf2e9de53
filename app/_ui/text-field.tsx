'use client'

import { useId } from 'react'
import { say } from '../_text'
import entry from './entry.module.css'
import { FieldRow } from './field-row'
import { joinClasses } from './join-classes'
import { useEntry } from './use-entry'

export type TextFieldProps = {
  label: string
  value: string | undefined
  hint?: string
  placeholder?: string
  maxLength?: number
  isRequired?: boolean
  isDisabled?: boolean
  /** Several lines; Enter then begins a new one. */
  isLong?: boolean
  /** A calendar day. */
  isDay?: boolean
  onCommit: (value: string | undefined) => void
}

/** Entry of words or a day. Enter and leaving the field commit, Escape takes back. */
export function TextField(props: TextFieldProps) {
  const { label, value, hint, placeholder, maxLength = 120, isRequired = false, isDisabled = false, isLong = false, isDay = false, onCommit } = props
  const id = useId()
  const { error, input } = useEntry((typed) => {
    const text = typed.trim()
    if (text === '' && isRequired) return say('entry.required', { field: label })
    if (text.length > maxLength) return say('entry.too-long', { field: label, count: maxLength })
    if (text !== (value ?? '')) onCommit(text === '' ? undefined : text)
    return undefined
  }, { isLong })
  const common = {
    id,
    placeholder,
    disabled: isDisabled,
    required: isRequired,
    'aria-describedby': [hint && `${id}-hint`, error && `${id}-error`].filter(Boolean).join(' ') || undefined,
    ...input(value ?? ''),
  }
  return (
    <FieldRow label={label} htmlFor={id} hint={hint} hintId={`${id}-hint`} error={error} errorId={`${id}-error`} isWide={!isDay} isSpanning>
      <span className={entry.box} data-wrong={error !== undefined}>
        {isLong
          ? <textarea className={joinClasses(entry.input, entry.area)} rows={3} {...common} />
          : <input className={entry.input} type={isDay ? 'date' : 'text'} autoComplete="off" {...common} />}
      </span>
    </FieldRow>
  )
}
