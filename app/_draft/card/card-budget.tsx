import type { BackUpCard } from '@/lib/priming'
import type { BackUpInputs, DraftSheet } from '@/lib/supply'
import { say, type UnitSystem } from '../../_text'
import '../../_text/areas/draft'
import styles from './back-up-card.module.css'
import { budgetWords } from './card-words'

/** Water and time: what it takes, and what goes wrong. */
export function CardBudget({ sheet, inputs, card, system }: { sheet: DraftSheet; inputs: BackUpInputs; card: BackUpCard; system: UnitSystem }) {
  return (
    <section className={styles.budget}>
      <h2>{say('draft.card.budget')}</h2>
      <ul>{budgetWords(sheet, inputs, card, system).map((text) => <li key={text}>{text}</li>)}</ul>
    </section>
  )
}
