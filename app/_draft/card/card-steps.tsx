import type { BackUpCard } from '@/lib/priming'
import { say, type UnitSystem } from '../../_text'
import '../../_text/areas/draft'
import styles from './back-up-card.module.css'
import { stepWords } from './card-words'

/** What the hands do, in order, each with the gauge sign that ends it. */
export function CardSteps({ card, system }: { card: BackUpCard; system: UnitSystem }) {
  const steps = stepWords(card, system)
  if (steps.length === 0) return null
  return (
    <section className={styles.steps}>
      <h2>{say('draft.card.steps')}</h2>
      <ol>
        {steps.map(({ code, act, until }) => (
          <li key={code}>
            <span className={styles.do}>{act}</span>
            {until !== undefined && <span className={styles.until}>{until}</span>}
          </li>
        ))}
      </ol>
    </section>
  )
}
