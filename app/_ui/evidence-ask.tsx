'use client'

import type { EvidenceMark } from '@/lib/evidence'
import { say } from '../_text'
import { MarkShape } from './evidence-chip'
import styles from './evidence-ask.module.css'
import { useLinger } from './use-linger'

/** The ways of knowing that a person can say of a figure, in the order in which they are asked. */
export const askedMarks = ['measured', 'handbook', 'assumed'] as const satisfies readonly EvidenceMark[]

export type EvidenceAskProps = {
  /** Name of the field that is being typed in. */
  field: string
  /** Whether a figure is being typed. */
  isOn: boolean
  /** What has been said; nothing is chosen while nobody has. */
  mark: EvidenceMark | undefined
  onChoose: (mark: EvidenceMark) => void
}

/**
 * Asks while a figure is being typed how it is known, in words. It never takes the focus from the field, so that the typing goes on;
 * by keyboard the arrows up and down in the field do the same, or the mark that stands there afterwards.
 */
export function EvidenceAsk({ field, isOn, mark, onChoose }: EvidenceAskProps) {
  const isThere = useLinger(isOn)
  if (!isThere) return null
  return (
    <div className={styles.ask} data-gone={!isOn} role="group" aria-label={say('evidence.how-known-typed', { field })}>
      {askedMarks.map((one) => (
        <button
          key={one} type="button" tabIndex={-1} className={styles.one} aria-pressed={one === mark} title={say(`evidence.${one}.means`)}
          onPointerDown={(event) => { event.preventDefault() }} onMouseDown={(event) => { event.preventDefault() }} onClick={() => { onChoose(one) }}
        >
          <MarkShape mark={one} /> <span>{say(`evidence.${one}`)}</span>
        </button>
      ))}
    </div>
  )
}
