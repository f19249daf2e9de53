import { inchesOfMercuryFromFeetOfWater } from '../units'
import { LOOP_PRESSURE_PSI, type BackUpSite, type BackUpWindow } from './back-up-window'
import type { BackUpBudget } from './back-up-budget'

/** What the hands do; the words stand in the message files. */
export type BackUpStepCode =
  | 'close-all-and-check' | 'tank-to-pump-open' | 'tank-fill-open' | 'throttle-up' | 'check-vacuum' | 'crack-intake' | 'wait-recover'
  | 'open-intake-further' | 'intake-full' | 'tank-to-pump-shut' | 'open-discharge-shut-fill' | 'give-up'

/** The gauge to wait for, in the direction the sign says. */
export type GaugeSign = {
  readonly gauge: 'discharge_psi' | 'intake_inHg' | 'tank_gal' | 'clock_s'
  readonly sign: 'at-least' | 'at-most' | 'recovers-to' | 'steady-at'
  readonly value: number
}

export type BackUpStep = { readonly code: BackUpStepCode; readonly openShare?: number; readonly waitFor: readonly GaugeSign[] }

/** A fall of the discharge pressure to this share says: no further, wait. Judgement from the drill's model. */
const HOLD_BACK_SHARE = 0.8
/** Below this the pump is going air bound: shut the intake. Judgement. */
const SHUT_SHARE = 0.5

/**
 * The order of steps of a back-up prime with the gauge sign that ends each one.
 *
 * @returns steps in order, the vacuum to aim for before the least that lifts the water where a valve is gated; only the give-up step when the lift is out of reach
 * @source order after the equipment maker's and the state fire mechanics' articles (seen); the signs are our physics
 */
export function backUpSteps(site: BackUpSite, window: BackUpWindow, budget: BackUpBudget): readonly BackUpStep[] {
  const giveUp: BackUpStep = { code: 'give-up', waitFor: [
    { gauge: 'tank_gal', sign: 'at-most', value: budget.waterNeeded_gal },
    ...(budget.giveUp_s === undefined ? [] : [{ gauge: 'clock_s', sign: 'at-least', value: budget.giveUp_s } as const]),
  ] }
  if (window.verdict === 'lift-out-of-reach') return [giveUp]
  const share = (valve: 'tank-fill' | 'tank-to-pump'): number => (window.gate?.valve === valve ? window.gate.openShare : 1)
  const least_inHg = inchesOfMercuryFromFeetOfWater(window.bottom_ft)
  const aim: readonly GaugeSign[] = window.gate ? [{ gauge: 'intake_inHg', sign: 'steady-at', value: inchesOfMercuryFromFeetOfWater(window.gate.vacuum_ft) }] : []
  const full_inHg = inchesOfMercuryFromFeetOfWater(site.lift_ft)
  const psi = (value: number, sign: GaugeSign['sign']): GaugeSign => ({ gauge: 'discharge_psi', sign, value })
  return [
    { code: 'close-all-and-check', openShare: 0, waitFor: [] },
    { code: 'tank-to-pump-open', openShare: share('tank-to-pump'), waitFor: [psi(1, 'at-least')] },
    { code: 'tank-fill-open', openShare: share('tank-fill'), waitFor: [] },
    { code: 'throttle-up', waitFor: [psi(LOOP_PRESSURE_PSI, 'at-least')] },
    { code: 'check-vacuum', waitFor: [...aim, { gauge: 'intake_inHg', sign: 'at-least', value: least_inHg }] },
    { code: 'crack-intake', openShare: 0.02, waitFor: [psi(HOLD_BACK_SHARE * LOOP_PRESSURE_PSI, 'at-most')] },
    { code: 'wait-recover', waitFor: [psi(LOOP_PRESSURE_PSI, 'recovers-to'), psi(SHUT_SHARE * LOOP_PRESSURE_PSI, 'at-most')] },
    { code: 'open-intake-further', waitFor: [psi(LOOP_PRESSURE_PSI, 'recovers-to')] },
    { code: 'intake-full', openShare: 1, waitFor: [psi(LOOP_PRESSURE_PSI, 'steady-at'), { gauge: 'intake_inHg', sign: 'steady-at', value: full_inHg }] },
    { code: 'tank-to-pump-shut', openShare: 0, waitFor: [psi(LOOP_PRESSURE_PSI, 'steady-at')] },
    { code: 'open-discharge-shut-fill', waitFor: [{ gauge: 'tank_gal', sign: 'steady-at', value: budget.waterOnHand_gal }] },
    giveUp,
  ]
}
