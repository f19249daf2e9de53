import { issue, requireNotNegative, requirePositive, requireThat, type Issue } from '../issue'
import { PSI_PER_FOOT_OF_WATER } from '../units'
import { loopFlow_gpm, loopVacuum_ft } from './tank-loop'

/** What the back-up prime needs to know of a pumper. */
export type BackUpRig = {
  readonly tank_gal: number
  /** Water in the tank now; absent: full, which makes the least vacuum. */
  readonly tankWater_gal?: number
  /** Water surface above the pump's eye, tank empty and full. */
  readonly tankBottom_ft: number
  readonly tankTop_ft: number
  /** C, see `tankToPumpCoefficient`. */
  readonly tankToPump_gpmPerSqrtFt: number
  /** Cf, see `tankFillCoefficient`. */
  readonly tankFill_gpmPerSqrtPsi: number
  /** Lowest and highest that the two may be while nobody has measured them. */
  readonly tankToPumpRange_gpmPerSqrtFt?: readonly [number, number]
  readonly tankFillRange_gpmPerSqrtPsi?: readonly [number, number]
  /** Pressure that lifts water up the fill line; absent: 5 psi. */
  readonly tankFillBack_psi?: number
  /** Points of the pump's net pressure curve, flow rising and pressure falling. */
  readonly curve: readonly { readonly flow_gpm: number; readonly pressure_psi: number }[]
  /** Suction hose and intake piping to be filled. */
  readonly hose_gal: number
  readonly pump_gal: number
  /** Below this the tank's outlet draws air; absent: a fiftieth of the tank. */
  readonly tankUncover_gal?: number
}

export type BackUpSite = {
  readonly lift_ft: number
  /** Atmosphere here, feet of water. */
  readonly atmosphere_ft: number
  /** Absolute head below which the eye cavitates at the loop's flow: vapour and what the impeller needs. */
  readonly cavitation_ft: number
  /** Vacuum wanted beyond the lift and beyond what the carried air costs; absent: 0.5 ft. */
  readonly spare_ft?: number
}

export type BackUpVerdict = 'works-open' | 'gate-tank-fill' | 'gate-tank-to-pump' | 'lift-out-of-reach'

export type BackUpWindow = {
  readonly verdict: BackUpVerdict
  /** Loop flow with both valves open, at the pressure. */
  readonly flow_gpm: number
  readonly pressure_psi: number
  readonly tankHeight_ft: number
  /** (Q/C)² − tank height: what the open loop makes at the eye; negative: above the atmosphere. */
  readonly vacuum_ft: number
  /** lift + margin. */
  readonly bottom_ft: number
  /** H_atm − H_cavitation. */
  readonly top_ft: number
  readonly margin_ft: number
  /** With both valves open; absent when the open loop would not lift at all. */
  readonly highestLiftOpen_ft?: number
  /** With the right valve gated to the right opening. */
  readonly highestLiftGated_ft: number
  readonly gate?: { readonly valve: 'tank-fill' | 'tank-to-pump'; readonly openShare: number; readonly flow_gpm: number; readonly vacuum_ft: number }
  /** Opening the intake with the valves as they stand open would run the tank down the suction. */
  readonly drainsTank: boolean
  /** The verdict at the ends of the coefficients' ranges, least vacuum first. */
  readonly verdictRange: readonly [BackUpVerdict, BackUpVerdict]
  readonly issues: readonly Issue[]
}

/** Discharge pressure of the loop before the intake is opened. Source: equipment maker's training article, seen. */
export const LOOP_PRESSURE_PSI = 150
/** Part of the loop's flow that is air while the column rises, in good hands. Judgement: the drill's model holds it there. */
export const CARRIED_AIR_SHARE = 0.05
/** Vacuum wanted beyond the lift where nobody asks for more. Judgement. */
export const SPARE_FT = 0.5
const FILL_BACK_PSI = 5
/** Aim this far above the bottom of the window at most: more vacuum is nearer to cavitation for no gain. */
const AIM_OVER_BOTTOM_FT = 3

/** Height of the tank's water over the eye. */
export const tankHeight_ft = (rig: BackUpRig): number =>
  rig.tankBottom_ft + (rig.tankTop_ft - rig.tankBottom_ft) * ((rig.tankWater_gal ?? rig.tank_gal) / rig.tank_gal)

/**
 * Whether circulated tank water can prime this pumper at this site.
 *
 *   lift + margin ≤ (Q/C)² − tank height ≤ H_atm − H_cavitation
 *
 * with Q the loop's flow at about 150 psi and C the tank-to-pump coefficient. The margin is
 * the spare and what carried air costs: (1 − (1 − 0.05)²)·(Q/C)². Too much vacuum is cured at
 * the tank fill, too little at tank-to-pump.
 *
 * @param rig  the pumper, see the type
 * @param site heads in feet of water
 * @returns the window, the verdict and the gate; issues `back-up-out-of-reach` (block),
 *   `back-up-drains-tank` (warn), `back-up-loop-pressure` (warn), `back-up-verdict-unsure` (warn)
 * @throws RangeError if a number is out of range
 * @source our physics (energy balance of the tank line); the practice it explains is common practice with
 *   no published limit of lift
 */
export function backUpPrimeWindow(rig: BackUpRig, site: BackUpSite): BackUpWindow {
  check(rig, site)
  const found = windowFor(rig, site, rig.tankToPump_gpmPerSqrtFt, rig.tankFill_gpmPerSqrtPsi)
  const [cLow, cHigh] = rig.tankToPumpRange_gpmPerSqrtFt ?? [rig.tankToPump_gpmPerSqrtFt, rig.tankToPump_gpmPerSqrtFt]
  const [fLow, fHigh] = rig.tankFillRange_gpmPerSqrtPsi ?? [rig.tankFill_gpmPerSqrtPsi, rig.tankFill_gpmPerSqrtPsi]
  const verdictRange = [windowFor(rig, site, cHigh, fLow).verdict, windowFor(rig, site, cLow, fHigh).verdict] as const
  const issues: Issue[] = []
  if (found.verdict === 'lift-out-of-reach') {
    issues.push(issue('back-up-out-of-reach', 'block', [], {
      lift_ft: site.lift_ft, highest_ft: found.highestLiftGated_ft, short_ft: site.lift_ft - found.highestLiftGated_ft }))
  }
  if (found.drainsTank) issues.push(issue('back-up-drains-tank', 'warn', [], { over_psi: -found.vacuum_ft * PSI_PER_FOOT_OF_WATER }))
  const most_psi = mostPressure_psi(rig.curve, found.gate?.flow_gpm ?? found.flow_gpm)
  const net_psi = found.pressure_psi + Math.max(0, found.gate?.vacuum_ft ?? found.vacuum_ft) * PSI_PER_FOOT_OF_WATER
  if (most_psi < net_psi) issues.push(issue('back-up-loop-pressure', 'warn', [], { net_psi, most_psi }))
  if (verdictRange[0] !== found.verdict || verdictRange[1] !== found.verdict) {
    issues.push(issue('back-up-verdict-unsure', 'warn', [], { least: verdictRange[0], most: verdictRange[1] }))
  }
  return { ...found, verdictRange, issues }
}

function windowFor(rig: BackUpRig, site: BackUpSite, c: number, cf: number): Omit<BackUpWindow, 'verdictRange' | 'issues'> {
  const pressure_psi = LOOP_PRESSURE_PSI
  const z_ft = tankHeight_ft(rig)
  const flow_gpm = loopFlow_gpm(cf, 1, pressure_psi, rig.tankFillBack_psi ?? FILL_BACK_PSI)
  const vacuum_ft = loopVacuum_ft(flow_gpm, c, 1, z_ft)
  const spare_ft = site.spare_ft ?? SPARE_FT
  const carriedCost = 1 - (1 - CARRIED_AIR_SHARE) ** 2
  const top_ft = site.atmosphere_ft - site.cavitation_ft
  // Cost of the carried air at the vacuum that just lifts: (v + z)·cost = v − lift − spare.
  const bottom_ft = (site.lift_ft + spare_ft + carriedCost * z_ft) / (1 - carriedCost)
  const margin_ft = bottom_ft - site.lift_ft
  const liftAt = (v_ft: number): number => v_ft - carriedCost * (v_ft + z_ft) - spare_ft
  const highestLiftOpen_ft = liftAt(Math.min(vacuum_ft, top_ft))
  const highestLiftGated_ft = liftAt(top_ft)
  const base = { flow_gpm, pressure_psi, tankHeight_ft: z_ft, vacuum_ft, bottom_ft, top_ft, margin_ft,
    ...(highestLiftOpen_ft > 0 && vacuum_ft <= top_ft ? { highestLiftOpen_ft } : {}), highestLiftGated_ft, drainsTank: vacuum_ft < 0 }
  if (bottom_ft > top_ft) return { ...base, verdict: 'lift-out-of-reach' }
  const aim_ft = Math.min((bottom_ft + top_ft) / 2, bottom_ft + AIM_OVER_BOTTOM_FT)
  if (vacuum_ft > top_ft) {
    const gated_gpm = c * Math.sqrt(aim_ft + z_ft)
    return { ...base, verdict: 'gate-tank-fill', gate: { valve: 'tank-fill', openShare: gated_gpm / flow_gpm, flow_gpm: gated_gpm, vacuum_ft: aim_ft } }
  }
  if (vacuum_ft < bottom_ft) {
    return { ...base, verdict: 'gate-tank-to-pump',
      gate: { valve: 'tank-to-pump', openShare: flow_gpm / (c * Math.sqrt(aim_ft + z_ft)), flow_gpm, vacuum_ft: aim_ft } }
  }
  return { ...base, verdict: 'works-open' }
}

/** Net pressure the pump can make at a flow: straight between the curve's points, level before the first, none after the last. */
export function mostPressure_psi(curve: BackUpRig['curve'], flow_gpm: number): number {
  const first = curve[0]
  if (first === undefined) return 0
  if (flow_gpm <= first.flow_gpm) return first.pressure_psi
  for (let index = 1; index < curve.length; index++) {
    const from = curve[index - 1]
    const to = curve[index]
    if (from && to && flow_gpm <= to.flow_gpm) {
      return from.pressure_psi + ((to.pressure_psi - from.pressure_psi) * (flow_gpm - from.flow_gpm)) / (to.flow_gpm - from.flow_gpm)
    }
  }
  return 0
}

function check(rig: BackUpRig, site: BackUpSite): void {
  requirePositive('tank_gal', rig.tank_gal)
  requirePositive('tankToPump_gpmPerSqrtFt', rig.tankToPump_gpmPerSqrtFt)
  requirePositive('tankFill_gpmPerSqrtPsi', rig.tankFill_gpmPerSqrtPsi)
  requireNotNegative('tankBottom_ft', rig.tankBottom_ft)
  requireThat(rig.tankTop_ft >= rig.tankBottom_ft, 'tankTop_ft', rig.tankTop_ft, 'no lower than tankBottom_ft')
  const water_gal = rig.tankWater_gal ?? rig.tank_gal
  requireThat(water_gal >= 0 && water_gal <= rig.tank_gal, 'tankWater_gal', water_gal, 'from 0 to what the tank holds')
  requireNotNegative('lift_ft', site.lift_ft)
  requirePositive('atmosphere_ft', site.atmosphere_ft)
  requireThat(site.cavitation_ft >= 0 && site.cavitation_ft < site.atmosphere_ft, 'cavitation_ft', site.cavitation_ft, 'below the atmosphere')
  requireNotNegative('spare_ft', site.spare_ft ?? SPARE_FT)
}
