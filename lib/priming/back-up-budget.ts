import { requirePositive } from '../issue'
import { SECONDS_PER_MINUTE } from '../units'
import type { BackUpRig, BackUpSite, BackUpWindow } from './back-up-window'

export type BackUpBudget = {
  /** Least water to try with: what keeps the outlet covered, fills a drained pump and refills a lost column; or a quarter tank, if that is more. */
  readonly waterNeeded_gal: number
  readonly waterOnHand_gal: number
  /** From cracking the intake to water at the valve: careful hands and bold ones. Absent when the lift is out of reach. */
  readonly primeSlow_s?: number
  readonly primeQuick_s?: number
  /** Stop and do something else after this. */
  readonly giveUp_s?: number
  /** How long the tank lasts through an open discharge in place of the closed loop. */
  readonly openDischarge_s: number
  readonly openDischarge_gpm: number
  readonly emptiesBeforePrime?: boolean
  /** After the prime, with the tank fill still open: until the tank is full, and what each ten seconds after that costs. */
  readonly overflowAfter_s?: number
  readonly overflowPerTenSeconds_gal?: number
}

/** Air that careful and bold hands let ride in the loop. Judgement. */
const CAREFUL_AIR_SHARE = 0.03
const BOLD_AIR_SHARE = 0.06
/** Common practice, no source. */
const LEAST_TANK_SHARE = 0.25
const UNCOVER_SHARE = 0.02

/**
 * How long water lasts through an open outlet.
 *
 * @param water_gal 0 or more
 * @param flow_gpm  above 0
 * @returns [s]; 1,000 gal at 1,000 gpm is 60
 * @throws RangeError if the flow is not above 0
 */
export function timeToEmpty_s(water_gal: number, flow_gpm: number): number {
  requirePositive('flow_gpm', flow_gpm)
  return (water_gal / flow_gpm) * SECONDS_PER_MINUTE
}

/**
 * Water and time of a back-up prime.
 *
 *   t = Pa · Vh / (Pe · α · Q)
 *
 * the hose's air at the eye's pressure Pe, carried off as the share α of the loop's flow Q.
 *
 * @param openDischarge_gpm flow of the discharge somebody might open instead, above 0
 * @returns the budgets
 * @source our physics; the shares of air are judgement, the quarter tank is common practice with no source
 */
export function backUpBudget(rig: BackUpRig, site: BackUpSite, window: BackUpWindow, openDischarge_gpm: number): BackUpBudget {
  const uncover_gal = rig.tankUncover_gal ?? UNCOVER_SHARE * rig.tank_gal
  const waterOnHand_gal = rig.tankWater_gal ?? rig.tank_gal
  const waterNeeded_gal = Math.max(LEAST_TANK_SHARE * rig.tank_gal, uncover_gal + rig.pump_gal + rig.hose_gal)
  const openDischarge_s = timeToEmpty_s(Math.max(0, waterOnHand_gal - uncover_gal), openDischarge_gpm)
  const base = { waterNeeded_gal, waterOnHand_gal, openDischarge_s, openDischarge_gpm }
  if (window.verdict === 'lift-out-of-reach') return base
  const flow_gpm = window.gate?.flow_gpm ?? window.flow_gpm
  const eye_ft = site.atmosphere_ft - (window.gate?.vacuum_ft ?? window.vacuum_ft)
  const time_s = (share: number): number => (SECONDS_PER_MINUTE * site.atmosphere_ft * rig.hose_gal) / (eye_ft * share * flow_gpm)
  const primeSlow_s = time_s(CAREFUL_AIR_SHARE)
  const primeQuick_s = time_s(BOLD_AIR_SHARE)
  return { ...base, primeSlow_s, primeQuick_s, giveUp_s: 2 * primeSlow_s, emptiesBeforePrime: openDischarge_s < primeQuick_s,
    overflowAfter_s: timeToEmpty_s(rig.tank_gal - waterOnHand_gal, flow_gpm), overflowPerTenSeconds_gal: (flow_gpm * 10) / SECONDS_PER_MINUTE }
}
