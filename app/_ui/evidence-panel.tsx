'use client'

import { Popover } from 'radix-ui'
import { useId, useState } from 'react'
import { evidenceMarks } from '@/lib/evidence'
import type { Evidence } from '@/lib/evidence'
import { say } from '../_text'
import { Button } from './button'
import entry from './entry.module.css'
import { EvidenceChip } from './evidence-chip'
import styles from './evidence-mark.module.css'

const details = ['by', 'on', 'source'] as const

export type EvidenceMarkProps = {
  /** Name of the field that it is about. */
  field: string
  evidence: Evidence | undefined
  isDisabled?: boolean
  onChange: (evidence: Evidence) => void
}

/** The mark of a figure with its panel, which is open at first: the four ways of knowing, by whom, when and from what. */
export function EvidencePanel({ field, evidence, isDisabled = false, onChange }: EvidenceMarkProps) {
  const mark = evidence?.mark ?? 'assumed'
  const [draft, setDraft] = useState<Evidence | undefined>(evidence ?? { mark })
  const id = useId()
  const shown = draft ?? evidence ?? { mark }

  const close = (isKept: boolean): void => {
    if (isKept && draft) onChange(draft)
    setDraft(undefined)
  }
  return (
    <Popover.Root open={draft !== undefined} onOpenChange={(isOpen) => { if (isOpen) setDraft(evidence ?? { mark }); else close(true) }}>
      <Popover.Trigger className={styles.trigger} disabled={isDisabled} aria-label={say('evidence.how-known-field', { field, mark: say(`evidence.${mark}`) })}>
        <EvidenceChip mark={mark} />
      </Popover.Trigger>
      <Popover.Portal>
        <Popover.Content
          className={styles.panel}
          align="end"
          sideOffset={4}
          collisionPadding={8}
          onEscapeKeyDown={() => { setDraft(undefined) }}
          aria-labelledby={`${id}-title`}
        >
          <form onSubmit={(event) => { event.preventDefault(); event.stopPropagation(); close(true) }}>
            <fieldset>
              <legend className={styles.title} id={`${id}-title`}>{say('evidence.how-known')}</legend>
              {evidenceMarks.filter((one) => one !== 'computed' || mark === 'computed').map((one) => (
                <label key={one} className={styles.choice}>
                  <input type="radio" name={`${id}-mark`} checked={shown.mark === one} onChange={() => { setDraft({ ...shown, mark: one }) }} />
                  <span className={styles.choiceWords}>
                    <EvidenceChip mark={one} />
                    <span className={styles.means}>{say(`evidence.${one}.means`)}</span>
                  </span>
                </label>
              ))}
            </fieldset>
            <div className={styles.details}>
              {details.filter((name) => name === 'source' || shown.mark === 'measured').map((name) => (
                <div key={name} className={name === 'source' ? styles.whole : undefined}>
                  <label className={styles.detailLabel} htmlFor={`${id}-${name}`}>{say(`evidence.${name}`)}</label>
                  <span className={entry.box}>
                    <input
                      id={`${id}-${name}`}
                      className={entry.input}
                      type={name === 'on' ? 'date' : 'text'}
                      maxLength={name === 'source' ? 400 : 120}
                      placeholder={name === 'source' ? say('evidence.source.hint') : undefined}
                      value={shown[name] ?? ''}
                      onChange={(event) => { setDraft({ ...shown, [name]: event.target.value || undefined }) }}
                    />
                  </span>
                </div>
              ))}
            </div>
            <Button type="submit" look="primary" size="s" icon="check" label={say('evidence.done')} />
          </form>
        </Popover.Content>
      </Popover.Portal>
    </Popover.Root>
  )
}
