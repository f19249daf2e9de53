import { loopVacuum_ft, tankHeight_ft, timeToEmpty_s, type BackUpCard } from '@/lib/priming'
import type { BackUpInputs, DraftSheet } from '@/lib/supply'
import { inchesOfMercuryFromFeetOfWater, PSI_PER_FOOT_OF_WATER } from '@/lib/units'
import { formatGiven, formatQuantity, formatUntil, say, type UnitSystem } from '../../_text'
import styles from './back-up-card.module.css'

/** A usual hand line. Common practice. */
const HAND_LINE_GPM = 150

/** Water and time: what it takes, what goes wrong with an open discharge or a hand line, what overflow costs. */
export function CardBudget({ sheet, inputs, card, system }: { sheet: DraftSheet; inputs: BackUpInputs; card: BackUpCard; system: UnitSystem }) {
  const { budget } = card
  const { rig } = inputs
  const gal = (value: number) => formatQuantity(value, 'gal', system, { style: 'headline', toward: 'up' })
  const time = (value: number) => formatQuantity(value, 's', system, { style: 'headline' })
  const hand_ft = loopVacuum_ft(HAND_LINE_GPM, rig.tankToPump_gpmPerSqrtFt, 1, tankHeight_ft(rig))
  const isSoft = sheet.draftSite.ground === 'soft' || sheet.draftSite.ground === 'firmGrass'
  return (
    <section className={styles.budget}>
      <h2>{say('draft.card.budget')}</h2>
      <ul>
        <li>{say('draft.card.water', { need: gal(budget.waterNeeded_gal), tank: gal(rig.tank_gal) })}</li>
        {budget.primeQuick_s !== undefined && budget.primeSlow_s !== undefined && <li>{say('draft.card.time', { quick: time(budget.primeQuick_s), slow: time(budget.primeSlow_s) })}</li>}
        <li>{say('draft.card.open-discharge', { flow: formatGiven(budget.openDischarge_gpm, system), time: formatUntil(budget.openDischarge_s) })}</li>
        <li>{say('draft.card.hand-line', { flow: formatQuantity(HAND_LINE_GPM, 'gpm', system), time: formatUntil(timeToEmpty_s(budget.waterOnHand_gal, HAND_LINE_GPM)), vacuum: hand_ft < 0 ? formatQuantity(-hand_ft * PSI_PER_FOOT_OF_WATER, 'psi', system) : formatQuantity(inchesOfMercuryFromFeetOfWater(hand_ft), 'inHg', system), side: hand_ft < 0 ? 'over' : 'under' })}</li>
        {budget.overflowPerTenSeconds_gal !== undefined && <li>{say('draft.card.overflow', { cost: gal(budget.overflowPerTenSeconds_gal), ground: isSoft ? 'soft' : 'firm' })}</li>}
      </ul>
    </section>
  )
}
