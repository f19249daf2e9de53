import type { BackUpCard } from '@/lib/priming'
import { say, type UnitSystem } from '../../_text'
import styles from './back-up-card.module.css'
import { giveUpWords } from './card-words'

/** When to stop trying, and what to do then. */
export function CardGiveUp({ card, system }: { card: BackUpCard; system: UnitSystem }) {
  const words = giveUpWords(card, system)
  if (!words) return null
  return (
    <section className={styles.giveUp}>
      <h2>{say('draft.card.give-up')}</h2>
      {words.map((text) => <p key={text}>{text}</p>)}
    </section>
  )
}
