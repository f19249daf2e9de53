'use client'

import type { BackUpCard as Card, BackUpVerdict } from '@/lib/priming'
import type { BackUpInputs, DraftSheet } from '@/lib/supply'
import { inchesOfMercuryFromFeetOfWater, PSI_PER_FOOT_OF_WATER } from '@/lib/units'
import { formatQuantity, formatShare, say } from '../../_text'
import { useUnitSystem } from '../../_ui/unit-system-context'
import { liftText } from '../lift-words'
import { isFallUnknown, seasonText } from '../season-words'
import { openWord, roundShare } from '../sheet-words'
import styles from './back-up-card.module.css'
import { CardBudget } from './card-budget'
import { CardGiveUp } from './card-give-up'
import { CardInputs } from './card-inputs'
import { CardSteps } from './card-steps'

const looks: Readonly<Record<BackUpVerdict, string>> = { 'works-open': 'works', 'gate-tank-fill': 'gate', 'gate-tank-to-pump': 'gate', 'lift-out-of-reach': 'never' }

/** One page for the panel: whether it works, the valves, the steps with the gauge sign to wait for, the budgets, when to give up. */
export function BackUpCard({ sheet, inputs, card }: { sheet: DraftSheet; inputs: BackUpInputs; card: Card }) {
  const [system] = useUnitSystem()
  const { pump, draftSite, place } = sheet
  const { window: found } = card
  const ft = (value: number) => formatQuantity(value, 'ft', system)
  const inHg = (feet: number) => formatQuantity(Math.max(0, inchesOfMercuryFromFeetOfWater(feet)), 'inHg', system)
  const share = formatShare(roundShare(found.gate?.openShare ?? 1))
  const aim = inHg(found.gate?.vacuum_ft ?? found.vacuum_ft)
  const [least, most] = found.verdictRange
  const pullText = (): string => {
    if (found.vacuum_ft < 0) return say('draft.card.above-air', { over: formatQuantity(-found.vacuum_ft * PSI_PER_FOOT_OF_WATER, 'psi', system) })
    return found.vacuum_ft > found.top_ft ? say('draft.card.over-top', { top: inHg(found.top_ft) }) : inHg(found.vacuum_ft)
  }
  const isUnsure = least !== found.verdict || most !== found.verdict
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
        <p className={styles.word}>{say(`draft.verdict.${found.verdict}`, { sure: isUnsure ? 'no' : 'yes', share, full: openWord(found.gate?.openShare), aim, lift: ft(place.lift_ft), most: ft(Math.max(0, found.highestLiftGated_ft)) })}</p>
        {isUnsure && <p>{say('draft.verdict.unsure', { least: say(`draft.verdict.short.${least}`), most: say(`draft.verdict.short.${most}`) })}</p>}
      </section>

      <dl className={styles.figures}>
        <Figure label={say('draft.card.makes')} value={pullText()} />
        <Figure label={say('draft.card.needs')} value={inHg(found.bottom_ft)} />
        <Figure label={say('draft.card.cavitates')} value={inHg(found.top_ft)} />
        <Figure label={say('draft.card.highest')} value={say('draft.card.highest.value', { open: found.highestLiftOpen_ft === undefined ? say('draft.card.highest.none') : ft(found.highestLiftOpen_ft), gated: ft(Math.max(0, found.highestLiftGated_ft)) })} />
      </dl>
      {found.drainsTank && <p className={styles.warn}>{say('draft.card.drains')}</p>}

      <div className={styles.columns}>
        <CardSteps card={card} system={system} />
        <div className={styles.side}>
          <CardBudget sheet={sheet} inputs={inputs} card={card} system={system} />
          <CardGiveUp card={card} system={system} />
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

function Figure({ label, value }: { label: string; value: string }) {
  return <div><dt>{label}</dt><dd>{value}</dd></div>
}
