'use client'

import { useRouter } from 'next/navigation'
import { useId, useState } from 'react'
import type { FormEvent } from 'react'
import { screenHref } from '../_links/screens'
import { say } from '../_text'
import '../_text/areas/home'
import { Button } from '../_ui/button'
import entry from '../_ui/entry.module.css'
import { FieldRow } from '../_ui/field-row'
import { useUnitSystem } from '../_ui/unit-system-context'
import { createDistrict } from './create-district'
import styles from './home.module.css'

/** Begins a district: its name is all that is needed. */
export function NewDistrict() {
  const router = useRouter()
  const [system] = useUnitSystem()
  const id = useId()
  const [name, setName] = useState('')
  const [error, setError] = useState<string>()
  const [isBusy, setBusy] = useState(false)

  const onSubmit = async (event: FormEvent): Promise<void> => {
    event.preventDefault()
    const trimmed = name.trim()
    if (trimmed === '') return setError(say('entry.required', { field: say('home.name') }))
    setBusy(true)
    const created = await createDistrict(trimmed, system)
    if ('id' in created) return router.push(screenHref('survey', created.id))
    setError(created.sentence)
    setBusy(false)
  }
  return (
    <form className={styles.new} onSubmit={(event) => { void onSubmit(event) }}>
      <FieldRow label={say('home.name')} htmlFor={id} error={error} errorId={`${id}-error`} isWide>
        <span className={entry.box} data-wrong={error !== undefined}>
          <input
            id={id}
            className={entry.input}
            maxLength={120}
            autoComplete="off"
            placeholder={say('home.name.hint')}
            aria-invalid={error !== undefined}
            aria-describedby={error && `${id}-error`}
            value={name}
            onChange={(event) => { setName(event.target.value); setError(undefined) }}
          />
        </span>
      </FieldRow>
      <Button type="submit" look="primary" icon="add" label={say('home.create')} disabled={isBusy} />
    </form>
  )
}
