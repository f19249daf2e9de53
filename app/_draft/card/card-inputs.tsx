import type { BackUpInput, BackUpInputs } from '@/lib/supply'
import { fieldLabel, formatNumber, formatQuantity, formatShare, say, type UnitSystem } from '../../_text'
import { EvidenceChip } from '../../_ui/evidence-chip'
import { rangeText } from '../sheet-words'
import styles from './back-up-card.module.css'

const bare = (symbol: string, value: number): string => (symbol.endsWith('Share') ? formatShare(value) : formatNumber(value, 0))
const valueOf = ({ symbol, value, unit }: BackUpInput, system: UnitSystem): string => (unit === '' ? bare(symbol, value) : formatQuantity(value, unit, system))
const rangeOf = ({ symbol, low, high, unit }: BackUpInput, system: UnitSystem): string => {
  if (low === high) return ''
  return unit === '' ? `${bare(symbol, low)}–${bare(symbol, high)}` : rangeText(low, high, unit, system)
}

/** The numbers the card stands on: how each is known, and how far it may be off. */
export function CardInputs({ inputs, system }: { inputs: BackUpInputs; system: UnitSystem }) {
  const isAllMeasured = inputs.inputs.every(({ mark }) => mark === 'measured' || mark === 'computed')
  return (
    <section className={styles.inputs}>
      <h2>{say('draft.card.inputs')}</h2>
      <ul>
        {inputs.inputs.map((input) => (
          <li key={input.symbol}>
            <span>{fieldLabel(input.symbol)}</span>
            <span className={styles.number}>{valueOf(input, system)}</span>
            <span className={styles.number}>{rangeOf(input, system)}</span>
            <EvidenceChip mark={input.mark} title={input.source} />
          </li>
        ))}
      </ul>
      {!isAllMeasured && <p className={styles.small}>{say('draft.card.measure')}</p>}
    </section>
  )
}
