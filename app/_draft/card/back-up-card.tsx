'use client'

import type { Issue } from '@/lib/issue'
import type { BackUpCard as Card, BackUpVerdict } from '@/lib/priming'
import type { BackUpInputs, DraftSheet } from '@/lib/supply'
import { say, sayIssue } from '../../_text'
import '../../_text/areas/draft'
import { useUnitSystem } from '../../_ui/unit-system-context'
import { liftText } from '../lift-words'
import { isFallUnknown, seasonText } from '../season-words'
import styles from './back-up-card.module.css'
import { CardBudget } from './card-budget'
import { CardGiveUp } from './card-give-up'
import { CardInputs } from './card-inputs'
import { CardSteps } from './card-steps'
import { verdictWords, windowWords } from './card-words'

const looks: Readonly<Record<BackUpVerdict, string>> = { 'works-open': 'works', 'gate-tank-fill': 'gate', 'gate-tank-to-pump': 'gate', 'lift-out-of-reach': 'never' }

/** One page for the panel: whether it works, the valves, the steps with the gauge sign to wait for, the budgets, when to give up. */
export function BackUpCard({ sheet, inputs, card, far }: { sheet: DraftSheet; inputs: BackUpInputs; card: Card; far?: Issue | undefined }) {
  const [system] = useUnitSystem()
  const { pump, draftSite } = sheet
  const { window: found } = card
  const { verdict, unsure } = verdictWords(sheet, card, system)
  // What a crew at the panel must know before it lays the first length.
  const warnings = [...sheet.issues.filter(({ code }) => code === 'suction-not-carried'), ...(far ? [far] : [])]
  const names = (id: string) => [pump, draftSite, ...(sheet.source ? [sheet.source] : [])].find((one) => one.id === id)?.name
  return (
    <article className={styles.card} aria-labelledby="back-up-title">
      <header className={styles.head}>
        <div>
          <p className={styles.over}>{say('draft.card.title')}</p>
          <h1 id="back-up-title" className={styles.title}>{say('draft.card.heading', { pump: pump.name, site: draftSite.name })}</h1>
        </div>
        <p className={styles.lift}>{say('draft.card.lift', { lift: liftText(sheet, system), level: sheet.lift.drop_ft === 0 ? 'usual' : 'lower' })}</p>
      </header>
      {isFallUnknown(sheet) && <p className={styles.level}>{seasonText(sheet, system)}</p>}

      <section className={styles.verdict} data-look={looks[found.verdict]}>
        <p className={styles.word}>{verdict}</p>
        {unsure !== undefined && <p>{unsure}</p>}
      </section>

      <dl className={styles.figures}>
        {windowWords(card, system).map(({ label, value }) => <div key={label}><dt>{label}</dt><dd>{value}</dd></div>)}
      </dl>
      {warnings.map((one) => <p key={one.code} className={styles.warn}>{sayIssue(one, names, system)}</p>)}
      {found.drainsTank && <p className={styles.warn}>{say('draft.card.drains')}</p>}

      <div className={styles.columns}>
        <CardSteps card={card} system={system} />
        <div className={styles.side}>
          <CardBudget sheet={sheet} inputs={inputs} card={card} system={system} />
          <CardGiveUp sheet={sheet} card={card} system={system} />
        </div>
      </div>
      <CardInputs inputs={inputs} system={system} />

      <footer className={styles.foot}>
        <p className={styles.never}>{say('caution.back-up-prime')}</p>
        <p>{say('draft.card.foot')}</p>
      </footer>
    </article>
  )
}
