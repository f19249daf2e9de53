import type { BackUpCard, BackUpStep, GaugeSign } from '@/lib/priming'
import { formatQuantity, formatShare, say, type UnitSystem } from '../../_text'
import { roundShare } from '../sheet-words'
import styles from './back-up-card.module.css'

const unitOf = { discharge_psi: 'psi', intake_inHg: 'inHg', tank_gal: 'gal', clock_s: 's' } as const

const signText = ({ gauge, sign, value }: GaugeSign, system: UnitSystem): string =>
  say(`draft.sign.${gauge}.${sign}`, { value: formatQuantity(value, unitOf[gauge], system, gauge === 'discharge_psi' || gauge === 'tank_gal' ? { digits: 0 } : {}) })

const joined = (signs: readonly GaugeSign[], key: 'draft.sign.and' | 'draft.sign.or', system: UnitSystem): string =>
  signs.map((sign) => signText(sign, system)).reduce((first, second) => say(key, { first, second }))

/** What the hands do, in order, each with the gauge sign that ends it. */
export function CardSteps({ card, system }: { card: BackUpCard; system: UnitSystem }) {
  const steps = card.steps.filter(({ code }) => code !== 'give-up')
  const giveUp = card.steps.find(({ code }) => code === 'give-up')
  return (
    <section className={styles.steps}>
      {steps.length > 0 && (
        <>
          <h2>{say('draft.card.steps')}</h2>
          <ol>
            {steps.map((step) => (
              <li key={step.code}>
                <span className={styles.do}>{say(`draft.step.${step.code}`, { share: formatShare(roundShare(step.openShare ?? 1)), full: step.openShare === undefined || step.openShare >= 1 ? 'yes' : 'no' })}</span>
                {signs(step)}
              </li>
            ))}
          </ol>
        </>
      )}
      {giveUp && (
        <div className={styles.giveUp}>
          <h2>{say('draft.card.give-up')}</h2>
          {steps.length > 0 && <p>{joined(giveUp.waitFor, 'draft.sign.or', system)}</p>}
          <p>{say('draft.card.then')}</p>
        </div>
      )}
    </section>
  )

  function signs({ code, waitFor }: BackUpStep) {
    if (waitFor.length === 0) return null
    const words = code === 'wait-recover'
      ? say('draft.sign.recover-or-shut', Object.fromEntries(waitFor.map(({ sign, value }) => [sign === 'at-most' ? 'shut' : 'full', formatQuantity(value, 'psi', system, { digits: 0 })])))
      : joined(waitFor, 'draft.sign.and', system)
    return <span className={styles.until}>{words}</span>
  }
}
