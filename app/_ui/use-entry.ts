'use client'

import { useState } from 'react'
import type { ChangeEvent, KeyboardEvent } from 'react'

export type Entry = {
  /** What is being typed; absent while nobody is. */
  readonly draft: string | undefined
  /** Why the text was refused. */
  readonly error: string | undefined
  /** Properties of the input. @param shown its text while nobody types */
  readonly input: (shown: string) => {
    value: string
    'aria-invalid': boolean
    onChange: (event: ChangeEvent<HTMLInputElement | HTMLTextAreaElement>) => void
    onBlur: () => void
    onKeyDown: (event: KeyboardEvent) => void
  }
}

/**
 * Text that is typed into a field: Enter and leaving the field commit, Escape takes back.
 *
 * @param take takes the text over; returns the sentence of a refusal, after which the text stays
 */
export function useEntry(take: (text: string) => string | undefined, { isLong = false } = {}): Entry {
  const [draft, setDraft] = useState<string>()
  const [error, setError] = useState<string>()
  const drop = () => {
    setDraft(undefined)
    setError(undefined)
  }
  const commit = () => {
    if (draft === undefined) return
    const refusal = take(draft)
    if (refusal === undefined) drop()
    else setError(refusal)
  }
  return {
    draft, error,
    input: (shown) => ({
      value: draft ?? shown,
      'aria-invalid': error !== undefined,
      onChange: (event) => { setDraft(event.target.value) },
      onBlur: commit,
      onKeyDown: (event) => {
        if (event.key === 'Enter' && !isLong) commit()
        if (event.key === 'Escape' && draft !== undefined) {
          event.stopPropagation()
          drop()
        }
      },
    }),
  }
}
