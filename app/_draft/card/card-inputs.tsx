import type { BackUpInputs } from '@/lib/supply'
import { say, type UnitSystem } from '../../_text'
import '../../_text/areas/draft'
import { EvidenceChip } from '../../_ui/evidence-chip'
import styles from './back-up-card.module.css'
import { inputWords, isAllMeasured } from './card-words'

/** The numbers the card stands on: how each is known, and how far it may be off. */
export function CardInputs({ inputs, system }: { inputs: BackUpInputs; system: UnitSystem }) {
  return (
    <section className={styles.inputs}>
      <h2>{say('draft.card.inputs')}</h2>
      <ul>
        {inputWords(inputs, system).map(({ symbol, name, value, range, mark, source }) => (
          <li key={symbol}>
            <span>{name}</span>
            <span className={styles.number}>{value}</span>
            <span className={styles.number}>{range}</span>
            <EvidenceChip mark={mark} title={source} />
          </li>
        ))}
      </ul>
      {!isAllMeasured(inputs) && <p className={styles.small}>{say('draft.card.measure')}</p>}
    </section>
  )
}
