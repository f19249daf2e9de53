import type { BackUpInput, BackUpInputs } from '@/lib/supply'
import { fieldLabel, formatNumber, formatQuantity, say, type UnitSystem } from '../../_text'
import { EvidenceChip } from '../../_ui/evidence-chip'
import { rangeText } from '../sheet-words'
import styles from './back-up-card.module.css'

const valueOf = ({ value, unit }: BackUpInput, system: UnitSystem): string => (unit === '' ? formatNumber(value, 0) : formatQuantity(value, unit, system))
const rangeOf = ({ low, high, unit }: BackUpInput, system: UnitSystem): string => (unit === '' ? `${formatNumber(low, 0)}–${formatNumber(high, 0)}` : rangeText(low, high, unit, system))

/** The numbers the card stands on: how each is known, and how far it may be off. */
export function CardInputs({ inputs, system }: { inputs: BackUpInputs; system: UnitSystem }) {
  const isAllMeasured = inputs.inputs.every(({ mark }) => mark === 'measured' || mark === 'computed')
  return (
    <section className={styles.inputs}>
      <h2>{say('draft.card.inputs')}</h2>
      <table>
        <tbody>
          {inputs.inputs.map((input) => (
            <tr key={input.symbol}>
              <th scope="row">{fieldLabel(input.symbol)}</th>
              <td className={styles.number}>{valueOf(input, system)}</td>
              <td className={styles.number}>{rangeOf(input, system)}</td>
              <td><EvidenceChip mark={input.mark} title={input.source} /></td>
            </tr>
          ))}
        </tbody>
      </table>
      {!isAllMeasured && <p className={styles.small}>{say('draft.card.measure')}</p>}
    </section>
  )
}
