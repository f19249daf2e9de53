'use client'

import { useEffect, useId, useState } from 'react'
import type { FormEvent } from 'react'
import { say } from '../_text'
import '../_text/areas/devices'
import { Button } from '../_ui/button'
import entry from '../_ui/entry.module.css'
import { FieldRow } from '../_ui/field-row'
import { Wordmark } from '../_ui/wordmark'
import { ask } from './ask'
import styles from './devices.module.css'

/** The one page that a device sees before it has joined: a code, and a name for the station's list. */
export function JoinScreen() {
  const [codeId, nameId] = [useId(), useId()]
  const [code, setCode] = useState('')
  const [name, setName] = useState('')
  const [error, setError] = useState<string>()
  const [isBusy, setBusy] = useState(false)

  // A scanned code comes behind the #, which browsers send to nobody; from there it goes into the field, and off the address.
  useEffect(() => {
    const scanned = decodeURIComponent(location.hash.slice(1))
    if (!scanned) return
    history.replaceState(null, '', location.pathname)
    queueMicrotask(() => { setCode(scanned.slice(0, 40)) })
  }, [])

  const onSubmit = async (event: FormEvent): Promise<void> => {
    event.preventDefault()
    if (!isSecureContext) return setError(say('devices.join.insecure'))
    const missing = code.trim() === '' ? say('devices.join.code') : name.trim() === '' ? say('devices.join.name') : undefined
    if (missing !== undefined) return setError(say('entry.required', { field: missing }))
    setBusy(true)
    const asked = await ask<{ page: string }>('/api/join', 'POST', { code, name: name.trim() }, say('devices.join.unreachable'))
    if ('value' in asked) return location.replace(asked.value.page)
    setBusy(false)
    setError(asked.sentence)
  }
  return (
    <main className={styles.join}>
      <Wordmark />
      <h1 className={styles.title}>{say('devices.join.title')}</h1>
      <p>{say('devices.join.lead')}</p>
      <form className={styles.fields} onSubmit={(event) => { void onSubmit(event) }}>
        <FieldRow label={say('devices.join.code')} htmlFor={codeId} hint={say('devices.join.code.hint')} hintId={`${codeId}-hint`} isWide isSpanning>
          <span className={entry.box}>
            <input id={codeId} className={`${entry.input} ${styles.typed}`} autoComplete="off" autoCapitalize="characters" spellCheck={false} maxLength={40} aria-describedby={`${codeId}-hint`} value={code} onChange={(event) => { setCode(event.target.value); setError(undefined) }} />
          </span>
        </FieldRow>
        <FieldRow label={say('devices.join.name')} htmlFor={nameId} hint={say('devices.join.name.hint')} hintId={`${nameId}-hint`} isWide isSpanning>
          <span className={entry.box}>
            <input id={nameId} className={entry.input} autoComplete="off" maxLength={60} aria-describedby={`${nameId}-hint`} value={name} onChange={(event) => { setName(event.target.value); setError(undefined) }} />
          </span>
        </FieldRow>
        <p className={styles.error} role="alert">{error}</p>
        <Button type="submit" look="primary" label={say('devices.join.submit')} disabled={isBusy} />
      </form>
    </main>
  )
}
