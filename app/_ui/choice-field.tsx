'use client'

import { useId } from 'react'
import { Icon } from '../_look/icon'
import { say } from '../_text'
import entry from './entry.module.css'
import { FieldRow } from './field-row'
import { joinClasses } from './join-classes'

export type Choice<V extends string> = { readonly value: V; readonly label: string }

export type ChoiceFieldProps<V extends string> = {
  label: string
  choices: readonly Choice<V>[]
  value: V | undefined
  hint?: string
  isDisabled?: boolean
  isWide?: boolean
  /** Words of the empty choice; without them there is none once a value is set. */
  none?: string
  onCommit: (value: V | undefined) => void
}

/** One of a list of choices. */
export function ChoiceField<V extends string>({ label, choices, value, hint, isDisabled = false, isWide = true, none, onCommit }: ChoiceFieldProps<V>) {
  const id = useId()
  return (
    <FieldRow label={label} htmlFor={id} hint={hint} hintId={`${id}-hint`} isWide={isWide} isSpanning>
      <span className={entry.box}>
        <select
          id={id}
          className={joinClasses(entry.input, entry.select)}
          disabled={isDisabled}
          aria-describedby={hint && `${id}-hint`}
          value={value ?? ''}
          onChange={(event) => { onCommit(choices.find((choice) => choice.value === event.target.value)?.value) }}
        >
          {(none !== undefined || value === undefined) && <option value="">{none ?? say('kit.choose')}</option>}
          {choices.map((choice) => <option key={choice.value} value={choice.value}>{choice.label}</option>)}
        </select>
        <span className={entry.chevron}><Icon name="chevron" size={14} /></span>
      </span>
    </FieldRow>
  )
}
