'use client'

import { useId } from 'react'
import type { Point } from '@/lib/geo'
import { formatPoint, parsePoint, say } from '../_text'
import { Button } from './button'
import entry from './entry.module.css'
import { FieldRow } from './field-row'
import { useEntry } from './use-entry'

export type PointFieldProps = {
  label: string
  value: Point | undefined
  isRequired?: boolean
  /** Begins picking the place on the map. */
  onPick?: () => void
  isPicking?: boolean
  onCommit: (value: Point | undefined) => void
}

/** Entry of a place, by its latitude and longitude or on the map. */
export function PointField({ label, value, isRequired = false, onPick, isPicking = false, onCommit }: PointFieldProps) {
  const id = useId()
  const shown = value ? formatPoint(value) : ''
  const { error, input } = useEntry((text) => {
    const parsed = parsePoint(text, label)
    if (parsed.kind === 'refused') return parsed.sentence
    if (parsed.kind === 'absent' && isRequired) return say('entry.required', { field: label })
    if (text.trim() !== shown) onCommit(parsed.kind === 'value' ? parsed.value : undefined)
    return undefined
  })
  return (
    <FieldRow label={label} htmlFor={id} error={error} errorId={`${id}-error`} isWide>
      <span className={entry.box} data-wrong={error !== undefined}>
        <input
          id={id}
          className={entry.input}
          autoComplete="off"
          spellCheck={false}
          required={isRequired}
          aria-describedby={error && `${id}-error`}
          placeholder={say('entry.latitude-longitude')}
          {...input(shown)}
        />
        {onPick && <Button look="quiet" size="s" icon="pick" label={say('kit.pick')} aria-pressed={isPicking} onClick={onPick} />}
      </span>
    </FieldRow>
  )
}
