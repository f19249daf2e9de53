import type { BackUpCard, BackUpStep, GaugeSign } from '@/lib/priming'
import { formatShare, say, type UnitSystem } from '../../_text'
import { openWord, roundShare } from '../sheet-words'
import styles from './back-up-card.module.css'
import { joined, shownSign } from './sign-words'

/** What the hands do, in order, each with the gauge sign that ends it. */
export function CardSteps({ card, system }: { card: BackUpCard; system: UnitSystem }) {
  const steps = card.steps.filter(({ code }) => code !== 'give-up')
  if (steps.length === 0) return null
  return (
    <section className={styles.steps}>
      <h2>{say('draft.card.steps')}</h2>
      <ol>
        {steps.map((step) => (
          <li key={step.code}>
            <span className={styles.do}>{say(`draft.step.${step.code}`, { share: formatShare(roundShare(step.openShare ?? 1)), full: openWord(step.openShare) })}</span>
            {signs(step)}
          </li>
        ))}
      </ol>
    </section>
  )

  function signs({ code, waitFor }: BackUpStep) {
    if (waitFor.length === 0) return null
    return <span className={styles.until}>{special(code, waitFor) ?? joined(waitFor, 'draft.sign.and', system)}</span>
  }

  /** Signs that say more than one after the other would. */
  function special(code: BackUpStep['code'], waitFor: readonly GaugeSign[]): string | undefined {
    const at = (gauge: GaugeSign['gauge'], sign: GaugeSign['sign']): string | undefined => {
      const found = waitFor.find((one) => one.gauge === gauge && one.sign === sign)
      return found && shownSign(gauge, found.value, system)
    }
    if (code === 'wait-recover') return say('draft.sign.recover-or-shut', { full: at('discharge_psi', 'recovers-to') ?? '', shut: at('discharge_psi', 'at-most') ?? '' })
    if (code === 'intake-full') return say('draft.sign.lift-alone', { pressure: at('discharge_psi', 'steady-at') ?? '', vacuum: at('intake_inHg', 'steady-at') ?? '' })
    if (code !== 'check-vacuum') return undefined
    const [aim, least = ''] = [at('intake_inHg', 'steady-at'), at('intake_inHg', 'at-least')]
    return aim === undefined ? say('draft.sign.least', { least }) : say('draft.sign.aim-or-least', { aim, least })
  }
}
