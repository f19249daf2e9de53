import type { EvidenceMark } from '@/lib/evidence'
import { say } from '../_text'
import { MarkShape } from './evidence-chip'
import styles from './evidence-ask.module.css'

const ways = ['measured', 'handbook', 'assumed'] as const satisfies readonly EvidenceMark[]

export type EvidenceAskProps = {
  /** Name of the field that is being typed in. */
  field: string
  mark: EvidenceMark
  onChoose: (mark: EvidenceMark) => void
}

/**
 * Asks while a figure is being typed how it is known: one tap changes what is taken for granted. It never takes the focus from the
 * field, so that the typing goes on; by keyboard the mark that stands there afterwards does the same.
 */
export function EvidenceAsk({ field, mark, onChoose }: EvidenceAskProps) {
  return (
    <span className={styles.ask} role="group" aria-label={say('evidence.how-known-typed', { field })}>
      {ways.map((one) => (
        <button
          key={one} type="button" tabIndex={-1} className={styles.one} aria-pressed={one === mark} aria-label={say(`evidence.${one}`)} title={`${say(`evidence.${one}`)}: ${say(`evidence.${one}.means`)}`}
          onPointerDown={(event) => { event.preventDefault() }} onMouseDown={(event) => { event.preventDefault() }} onClick={() => { onChoose(one) }}
        >
          <MarkShape mark={one} />
        </button>
      ))}
    </span>
  )
}
