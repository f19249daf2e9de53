import { issue, requireThat, type Issue } from '../issue'
import { feetOfWaterFromInchesOfMercury, inchesOfMercuryFromFeetOfWater } from '../units'
import { atmosphericHead_ft } from './atmosphere'
import { pumpSideFlow_gpm, suctionSideFlow_gpm, type PressureAsk } from './draft-sides'
import { pressureCorrection_psi } from './net-pressure'
import { pumpCurve, type PumpCurve } from './pump-curve'
import { RATING_WATER_DEGF, findWidestRatedSuction } from './pump-rating'
import type { DraftPlace, PumperHydraulics } from './pumper'
import { availableHead_ft, calibrateRequiredHead, type RequiredHead } from './required-head'
import { strainerCover, type StrainerCover } from './submergence'
import { suctionIssues, suctionLines, suctionLossAt1000gpm_ft, type IntakeGuess, type SuctionSetup } from './suction-setup'
import { vaporHead_ft } from './vapor-pressure'
import { velocityHead_ft } from './velocity-head'

export type DraftAsk = {
  readonly pumper: PumperHydraulics
  readonly suction: SuctionSetup | readonly SuctionSetup[]
  readonly place: DraftPlace
  readonly ask: PressureAsk
}

export type DraftCapacity = {
  /** The most that comes out: the smaller of the two sides. */
  readonly flow_gpm: number
  /** The flow with an unmeasured front or rear intake at the far ends of its assumed range; else the same. */
  readonly flowLow_gpm: number
  readonly flowHigh_gpm: number
  readonly limitedBy: 'suction' | 'pump' | 'lift'
  readonly suctionSide_gpm: number
  readonly pumpSide_gpm: number
  /** At `flow_gpm`. */
  readonly netPressure_psi: number
  readonly discharge_psi: number
  readonly suctionLoss_ft: number
  readonly requiredHead_ft: number
  /** Head left for hose and pump: air less vapor less lift. */
  readonly availableHead_ft: number
  /** Head left over at `flow_gpm`: 0 when suction limits, negative by as much as the lift is too high. */
  readonly margin_ft: number
  /** For an impossible lift, feet over the highest that gives any water; else 0. */
  readonly overLift_ft: number
  /** Lift at which flow is nil here. */
  readonly zeroFlowLift_ft: number
  /** What the intake gauge reads at `flow_gpm`, by where its tap sits. */
  readonly vacuumLow_inHg: number
  readonly vacuumHigh_inHg: number
  /** Water over each strainer: the 2 ft rule, and the larger of rule and vortex formula. Absent when none is sunk from here. */
  readonly strainerCover?: StrainerCover
  readonly required: RequiredHead
  readonly issues: readonly Issue[]
}

const WARN_LIFT_FT = 20
const WARN_VACUUM_INHG = 20
/** Warm water costs a noticeable lift from here on. Handbook (memory, moderate). */
const WARN_WATER_DEGF = 85

/**
 * The most a pumper can draft at a place.
 *
 *   suction side: H_atm − H_vap − lift − S·(Q/1000)² − a − b·(Q/rated)² = 0
 *   discharge side: the pump's net-pressure curve at the net pressure asked
 *
 * @param pumper  rating, and whatever was tested
 * @param suction hard suction or dry hydrant, with its intake; several run side by side
 * @param place   lift −50 to 60 ft, altitude, barometer, water temperature
 * @param ask     net pressure, or discharge pressure (net is then more by the pressure correction)
 * @returns flow, which side limits, heads and gauge range; issues `lift-impossible` (block), `net-pressure-beyond-curve`
 *   (block), `prime-short-of-pump-top` (block), `lift-over-20ft`, `vacuum-over-20inHg`, `intake-loss-unmeasured`,
 *   `warm-water`, `rated-hose-assumed` and those of the calibration, the curve and the suction
 * @throws RangeError if a number is out of range
 * @source own; loss and rating tables as marked in their files; classical lift table in ACCURACY.md
 */
export function draftCapacity({ pumper, suction, place, ask }: DraftAsk): DraftCapacity {
  const { lift_ft, altitude_ft, barometer_inHg, water_degF } = place
  requireThat(lift_ft >= -50 && lift_ft <= 60, 'lift_ft', lift_ft, 'from -50 to 60')
  const required = calibrateRequiredHead(pumper)
  const curve = pumpCurve(pumper.rated_gpm, pumper.curvePoints, pumper.overRating)
  const loss_ft = suctionLossAt1000gpm_ft(suction)
  const head_ft = availableHead_ft(place)

  const suctionSide_gpm = suctionSideFlow_gpm(head_ft, loss_ft, required)
  const pumpSide_gpm = pumpSideFlow_gpm(curve, ask, lift_ft, loss_ft)
  const spare_ft = head_ft - required.a_ft
  const limitedBy = spare_ft <= 0 ? 'lift' : suctionSide_gpm <= pumpSide_gpm ? 'suction' : 'pump'
  const flow_gpm = Math.min(suctionSide_gpm, pumpSide_gpm)
  const isGuessed = suctionLines(suction).some(({ intake = 'side', intakeExtraAt1000gpm_ft }) => intake !== 'side' && intakeExtraAt1000gpm_ft === undefined)
  const flowWith = (guess: IntakeGuess) => {
    if (!isGuessed) return flow_gpm
    const guess_ft = suctionLossAt1000gpm_ft(suction, guess)
    return Math.min(suctionSideFlow_gpm(head_ft, guess_ft, required), pumpSideFlow_gpm(curve, ask, lift_ft, guess_ft))
  }

  const suctionLoss_ft = loss_ft * (flow_gpm / 1000) ** 2
  const requiredHead_ft = required.a_ft + required.b_ft * (flow_gpm / required.rated_gpm) ** 2
  const correction_psi = pressureCorrection_psi(lift_ft, suctionLoss_ft)
  const netPressure_psi = 'netPressure_psi' in ask ? ask.netPressure_psi : ask.discharge_psi + correction_psi
  const lines = lineFlows(suction, loss_ft, flow_gpm)
  const velocityHeads_ft = Math.max(...lines.map((line) => velocityHead_ft(line.flow_gpm, line.size_in)))
  // A gauge cannot read more than the air over the vapor of the water.
  const most_inHg = inchesOfMercuryFromFeetOfWater(atmosphericHead_ft(altitude_ft, barometer_inHg) - vaporHead_ft(water_degF))
  const gauge_inHg = (vacuum_ft: number) => Math.min(most_inHg, Math.max(0, inchesOfMercuryFromFeetOfWater(vacuum_ft)))
  const covers = lines.filter(({ sunk }) => sunk).map((line) => strainerCover(line.flow_gpm, line.size_in))
  const deepest = covers.length > 0 ? covers.reduce((a, b) => (b.vortex_ft > a.vortex_ft ? b : a)) : undefined

  const result = {
    flow_gpm, flowLow_gpm: flowWith('high_ft'), flowHigh_gpm: flowWith('low_ft'), limitedBy, suctionSide_gpm, pumpSide_gpm,
    netPressure_psi, discharge_psi: netPressure_psi - correction_psi,
    suctionLoss_ft, requiredHead_ft, availableHead_ft: head_ft,
    margin_ft: head_ft - suctionLoss_ft - requiredHead_ft,
    overLift_ft: Math.max(0, -spare_ft),
    zeroFlowLift_ft: lift_ft + spare_ft,
    vacuumLow_inHg: gauge_inHg(lift_ft + suctionLoss_ft),
    vacuumHigh_inHg: gauge_inHg(lift_ft + suctionLoss_ft + velocityHeads_ft),
    strainerCover: deepest,
    required,
  } as const
  return { ...result, issues: findIssues({ pumper, suction, place, ask }, result, curve, loss_ft) }
}

type LineFlow = { readonly size_in: number; readonly flow_gpm: number; readonly sunk: boolean }

/** Flow in each line: set-ups side by side share by 1/√S, equal lines evenly. */
function lineFlows(suction: DraftAsk['suction'], loss_ft: number, flow_gpm: number): LineFlow[] {
  return suctionLines(suction).map((line) => ({
    size_in: line.size_in,
    flow_gpm: (flow_gpm * Math.sqrt(loss_ft / suctionLossAt1000gpm_ft(line))) / line.lineCount,
    sunk: !line.dryHydrant && line.strainer !== 'floating',
  }))
}

function findIssues(
  { pumper, suction, place: { lift_ft, water_degF } }: DraftAsk, result: Omit<DraftCapacity, 'issues'>, curve: PumpCurve, loss_ft: number,
): Issue[] {
  const issues: Issue[] = [...result.required.issues, ...curve.issues, ...suctionIssues(suction)]
  const { overLift_ft, zeroFlowLift_ft, vacuumHigh_inHg, netPressure_psi } = result
  if (result.limitedBy === 'lift') issues.push(issue('lift-impossible', 'block', [], { lift_ft, over_ft: overLift_ft, zeroFlowLift_ft }))
  else if (lift_ft > WARN_LIFT_FT) issues.push(issue('lift-over-20ft', 'warn', [], { lift_ft }))
  if (vacuumHigh_inHg > WARN_VACUUM_INHG) issues.push(issue('vacuum-over-20inHg', 'warn', [], { vacuum_inHg: vacuumHigh_inHg }))
  const highest_psi = curve.pressures_psi[curve.pressures_psi.length - 1] ?? 0
  if (result.pumpSide_gpm <= 0) issues.push(issue('net-pressure-beyond-curve', 'block', [], { netPressure_psi, highest_psi }))
  if (water_degF >= WARN_WATER_DEGF) {
    issues.push(issue('warm-water', 'note', [], { water_degF, lost_ft: vaporHead_ft(water_degF) - vaporHead_ft(RATING_WATER_DEGF) }))
  }

  const held_ft = pumper.dryVacuum_inHg === undefined ? Infinity : feetOfWaterFromInchesOfMercury(pumper.dryVacuum_inHg)
  const primingLift_ft = Math.min(zeroFlowLift_ft, held_ft)
  if (pumper.pumpTop_ft !== undefined && result.limitedBy !== 'lift' && lift_ft + pumper.pumpTop_ft > primingLift_ft) {
    issues.push(issue('prime-short-of-pump-top', 'block', [], { top_ft: lift_ft + pumper.pumpTop_ft, primingLift_ft }))
  }
  const widest = pumper.ratedSuction || result.required.basis === 'test-points' ? undefined : findWidestRatedSuction(pumper.rated_gpm)
  if (widest) {
    const { size_in, lineCount } = widest.suction
    const least = calibrateRequiredHead({ ...pumper, ratedSuction: widest.suction, ratedLift_ft: pumper.ratedLift_ft ?? widest.lift_ft })
    const least_gpm = Math.min(suctionSideFlow_gpm(result.availableHead_ft, loss_ft, least), result.pumpSide_gpm)
    if (least_gpm < result.flow_gpm * 0.99) issues.push(issue('rated-hose-assumed', 'note', [], { least_gpm, size_in, lineCount }))
  }
  return issues
}
