import type { BackUpCard } from '@/lib/priming'
import { say, type UnitSystem } from '../../_text'
import styles from './back-up-card.module.css'
import { joined } from './sign-words'

/** When to stop trying, and what to do then. */
export function CardGiveUp({ card, system }: { card: BackUpCard; system: UnitSystem }) {
  const giveUp = card.steps.find(({ code }) => code === 'give-up')
  if (!giveUp) return null
  return (
    <section className={styles.giveUp}>
      <h2>{say('draft.card.give-up')}</h2>
      {card.steps.length > 1 && <p>{joined(giveUp.waitFor, 'draft.sign.or', system)}</p>}
      <p>{say('draft.card.then')}</p>
    </section>
  )
}
