import type { BackUpCard } from '@/lib/priming'
import type { DraftSheet } from '@/lib/supply'
import { say, type UnitSystem } from '../../_text'
import '../../_text/areas/draft'
import styles from './back-up-card.module.css'
import { giveUpWords } from './card-words'

/** When to stop trying, and what to do then. */
export function CardGiveUp({ sheet, card, system }: { sheet: DraftSheet; card: BackUpCard; system: UnitSystem }) {
  const words = giveUpWords(sheet, card, system)
  if (!words) return null
  return (
    <section className={styles.giveUp}>
      <h2>{say('draft.card.give-up')}</h2>
      {words.map((text) => <p key={text}>{text}</p>)}
    </section>
  )
}
