'use client'

import { useId, useState } from 'react'
import type { Point } from '@/lib/geo'
import { formatPoint, parsePoint, say } from '../_text'
import { Button } from './button'
import entry from './entry.module.css'
import { FieldRow } from './field-row'

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
  const [draft, setDraft] = useState<string>()
  const [error, setError] = useState<string>()
  const id = useId()
  const shown = value ? formatPoint(value) : ''

  const commit = (): void => {
    if (draft === undefined) return
    const parsed = parsePoint(draft, label)
    if (parsed.kind === 'refused') return setError(parsed.sentence)
    if (parsed.kind === 'absent' && isRequired) return setError(say('entry.required', { field: label }))
    setDraft(undefined)
    setError(undefined)
    if (draft.trim() !== shown) onCommit(parsed.kind === 'value' ? parsed.value : undefined)
  }
  return (
    <FieldRow label={label} htmlFor={id} error={error} errorId={`${id}-error`} isWide>
      <span className={entry.box} data-wrong={error !== undefined}>
        <input
          id={id}
          className={entry.input}
          autoComplete="off"
          spellCheck={false}
          required={isRequired}
          aria-invalid={error !== undefined}
          aria-describedby={error && `${id}-error`}
          placeholder={say('entry.latitude-longitude')}
          value={draft ?? shown}
          onChange={(event) => { setDraft(event.target.value) }}
          onBlur={commit}
          onKeyDown={(event) => {
            if (event.key === 'Enter') commit()
            if (event.key === 'Escape' && draft !== undefined) {
              event.stopPropagation()
              setDraft(undefined)
              setError(undefined)
            }
          }}
        />
        {onPick && <Button look="quiet" size="s" icon="pick" label={say('kit.pick')} aria-pressed={isPicking} onClick={onPick} />}
      </span>
    </FieldRow>
  )
}
