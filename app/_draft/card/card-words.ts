import { loopVacuum_ft, tankHeight_ft, timeToEmpty_s, type BackUpCard, type BackUpStep, type GaugeSign } from '@/lib/priming'
import type { EvidenceMark } from '@/lib/evidence'
import type { BackUpInput, BackUpInputs, DraftSheet } from '@/lib/supply'
import { inchesOfMercuryFromFeetOfWater, PSI_PER_FOOT_OF_WATER } from '@/lib/units'
import { fieldLabel, formatGiven, formatNumber, formatQuantity, formatShare, formatUntil, say, type UnitSystem } from '../../_text'
import '../../_text/areas/draft'
import { openWord, rangeText, roundShare } from '../sheet-words'
import { joined, shownSign } from './sign-words'

/** A usual hand line. Common practice. */
const HAND_LINE_GPM = 150

export type StepWords = { readonly code: BackUpStep['code']; readonly act: string; readonly until?: string }

/** What the hands do, in order, each with the gauge sign that ends it. */
export function stepWords(card: BackUpCard, system: UnitSystem): StepWords[] {
  return card.steps.filter(({ code }) => code !== 'give-up').map((step) => ({
    code: step.code,
    act: say(`draft.step.${step.code}`, { share: formatShare(roundShare(step.openShare ?? 1)), full: openWord(step.openShare) }),
    ...(step.waitFor.length > 0 && { until: specialSigns(step, system) ?? joined(step.waitFor, 'draft.sign.and', system) }),
  }))
}

/** Signs that say more than one after the other would. */
function specialSigns({ code, waitFor }: BackUpStep, system: UnitSystem): string | undefined {
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

/** Water and time: what it takes, what goes wrong with an open discharge or a hand line, what overflow costs. */
export function budgetWords(sheet: DraftSheet, { rig }: BackUpInputs, { budget }: BackUpCard, system: UnitSystem): string[] {
  const gal = (value: number) => formatQuantity(value, 'gal', system, { style: 'headline', toward: 'up' })
  const time = (value: number) => formatQuantity(value, 's', system, { style: 'headline' })
  const hand_ft = loopVacuum_ft(HAND_LINE_GPM, rig.tankToPump_gpmPerSqrtFt, 1, tankHeight_ft(rig))
  const isSoft = sheet.draftSite.ground === 'soft' || sheet.draftSite.ground === 'firmGrass'
  return [
    say('draft.card.water', { need: gal(budget.waterNeeded_gal), tank: gal(rig.tank_gal) }),
    ...(budget.primeQuick_s !== undefined && budget.primeSlow_s !== undefined ? [say('draft.card.time', { quick: time(budget.primeQuick_s), slow: time(budget.primeSlow_s) })] : []),
    say('draft.card.open-discharge', { flow: formatGiven(budget.openDischarge_gpm, system), time: formatUntil(budget.openDischarge_s) }),
    say('draft.card.hand-line', { flow: formatQuantity(HAND_LINE_GPM, 'gpm', system), time: formatUntil(timeToEmpty_s(budget.waterOnHand_gal, HAND_LINE_GPM)), vacuum: hand_ft < 0 ? formatQuantity(-hand_ft * PSI_PER_FOOT_OF_WATER, 'psi', system) : formatQuantity(inchesOfMercuryFromFeetOfWater(hand_ft), 'inHg', system), side: hand_ft < 0 ? 'over' : 'under' }),
    ...(budget.overflowPerTenSeconds_gal !== undefined ? [say('draft.card.overflow', { cost: gal(budget.overflowPerTenSeconds_gal), ground: isSoft ? 'soft' : 'firm' })] : []),
  ]
}

/** When to stop trying, before the first valve where the lift is out of reach, and what to do then; undefined where the card has no such step. */
export function giveUpWords({ place }: DraftSheet, card: BackUpCard, system: UnitSystem): string[] | undefined {
  const { steps, window: { verdict, verdictRange, highestLiftGated_ft } } = card
  const giveUp = steps.find(({ code }) => code === 'give-up')
  if (!giveUp) return undefined
  const outOfReach = () => say('draft.card.give-up.out-of-reach', {
    sure: verdictRange.every((one) => one === verdict) ? 'yes' : 'no', lift: formatQuantity(place.lift_ft, 'ft', system), most: formatQuantity(Math.max(0, highestLiftGated_ft), 'ft', system),
  })
  return [steps.length > 1 ? joined(giveUp.waitFor, 'draft.sign.or', system) : outOfReach(), say('draft.card.then')]
}

export type InputWords = { readonly symbol: string; readonly name: string; readonly value: string; readonly range: string; readonly mark: EvidenceMark; readonly source: string }

const bare = (symbol: string, value: number): string => (symbol.endsWith('Share') ? formatShare(value) : formatNumber(value, 0))

/** The numbers the card stands on: how each is known, and how far it may be off. */
export const inputWords = (inputs: BackUpInputs, system: UnitSystem): InputWords[] =>
  inputs.inputs.map(({ symbol, value, unit, low, high, mark, source }: BackUpInput) => ({
    symbol, mark, source, name: fieldLabel(symbol),
    value: unit === '' ? bare(symbol, value) : formatQuantity(value, unit, system),
    range: low === high ? '' : unit === '' ? `${bare(symbol, low)}–${bare(symbol, high)}` : rangeText(low, high, unit, system),
  }))

export const isAllMeasured = ({ inputs }: BackUpInputs): boolean => inputs.every(({ mark }) => mark === 'measured' || mark === 'computed')

/** Whether it works, and what stands in doubt. */
export function verdictWords({ place }: DraftSheet, { window: found }: BackUpCard, system: UnitSystem): { verdict: string; unsure?: string } {
  const [least, most] = found.verdictRange
  const isUnsure = least !== found.verdict || most !== found.verdict
  const inHg = (feet: number) => formatQuantity(Math.max(0, inchesOfMercuryFromFeetOfWater(feet)), 'inHg', system)
  return {
    verdict: say(`draft.verdict.${found.verdict}`, {
      sure: isUnsure ? 'no' : 'yes', share: formatShare(roundShare(found.gate?.openShare ?? 1)), full: openWord(found.gate?.openShare), aim: inHg(found.gate?.vacuum_ft ?? found.vacuum_ft),
      lift: formatQuantity(place.lift_ft, 'ft', system), most: formatQuantity(Math.max(0, found.highestLiftGated_ft), 'ft', system),
    }),
    ...(isUnsure && { unsure: say('draft.verdict.unsure', { least: say(`draft.verdict.short.${least}`), most: say(`draft.verdict.short.${most}`) }) }),
  }
}

/** The window of the loop in four figures. */
export function windowWords({ window: found }: BackUpCard, system: UnitSystem): { readonly label: string; readonly value: string }[] {
  const ft = (value: number) => formatQuantity(value, 'ft', system)
  const inHg = (feet: number) => formatQuantity(Math.max(0, inchesOfMercuryFromFeetOfWater(feet)), 'inHg', system)
  const pull = found.vacuum_ft < 0
    ? say('draft.card.above-air', { over: formatQuantity(-found.vacuum_ft * PSI_PER_FOOT_OF_WATER, 'psi', system) })
    : found.vacuum_ft > found.top_ft ? say('draft.card.over-top', { top: inHg(found.top_ft) }) : inHg(found.vacuum_ft)
  return [
    { label: say('draft.card.makes'), value: pull },
    { label: say('draft.card.needs'), value: inHg(found.bottom_ft) },
    { label: say('draft.card.cavitates'), value: inHg(found.top_ft) },
    { label: say('draft.card.highest'), value: say('draft.card.highest.value', { open: found.highestLiftOpen_ft === undefined ? say('draft.card.highest.none') : ft(found.highestLiftOpen_ft), gated: ft(Math.max(0, found.highestLiftGated_ft)) }) },
  ]
}
