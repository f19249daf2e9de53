import { atmosphericHead_ft, hoseVolume_gal, pumpCurve, requiredHead_ft, vaporHead_ft } from '../hydraulics'
import type { EvidenceMark } from '../evidence'
import type { Pumper } from '../plan'
import {
  CARRIED_AIR_SHARE, LOOP_PRESSURE_PSI, SPARE_FT, assumedFillVelocityHeads, leastTankToPump_gpm, loopFlow_gpm, pipeBore_in, tankFillCoefficient, tankToPumpCoefficient, tankToPumpThatPasses,
  type BackUpRig, type BackUpSite,
} from '../priming'
import { findUnit } from '../units'
import type { BackUpInput } from './back-up-input'
import type { DraftSheet } from './draft-sheet'
import { placeInputs } from './place-inputs'

export type BackUpInputs = {
  readonly rig: BackUpRig
  readonly site: BackUpSite
  readonly inputs: readonly BackUpInput[]
  /** Most that tank-to-pump gives with the eye as low as it will go: what a wide open discharge throws away. */
  readonly openDischarge_gpm: number
}

/** Intake piping beside the hose. Judgement, as in the drill. */
const PIPING_GAL = 4.6
/** Casing of a 1,250 gpm pump; goes with the square root of the rating. Judgement, as in the drill. */
const PUMP_GAL = 12
const PUMP_RATED_GPM = 1250
const TANK_GAL = 1000
const TANK_BOTTOM_FT = 0.5
/** Water of a full tank above the pump: midship pump, tank above the frame. Judgement. */
const TANK_TOP = { low: 3, middle: 4.5, high: 6 } as const
/** A line better than the least that passes; twice is a short, wide one. Judgement. */
const BETTER_LINE_FACTOR = 2
/** A measured flow may be off by this much where nobody has said. */
const MEASURED_SPREAD = 0.1
/** Pressure that lifts water up the fill line, as in the window. */
const FILL_BACK_PSI = 5

/** What every card stands on and nobody measures: small heads, and the air that good hands let ride in the loop. Judgement. */
const judged = ([
  { symbol: 'tankBottom_ft', value: TANK_BOTTOM_FT, unit: 'ft', low: 0, high: 2 },
  { symbol: 'spare_ft', value: SPARE_FT, unit: 'ft', low: 0.25, high: 1 },
  { symbol: 'fillBack_psi', value: FILL_BACK_PSI, unit: 'psi', low: 3, high: 8 },
  { symbol: 'carriedAirShare', value: CARRIED_AIR_SHARE, unit: '', low: 0.03, high: 0.06 },
] satisfies Omit<BackUpInput, 'mark' | 'source'>[]).map((one): BackUpInput => ({ ...one, mark: 'assumed', source: 'judgement, no source' }))

/**
 * Rig and site of a back-up prime from what a district knows, with the doubt of each number.
 *
 * The tank-to-pump line is taken as the least that gives its tested flow, or the least a standard asks: it makes the most
 * vacuum, so it is the one that must be gated. A better line pulls less; the ends of the range show whether it matters.
 *
 * @param pump  the pumper; its tank water is taken as full unless given
 * @param sheet the pumper at the draft site
 * @param water_gal in the tank now
 * @returns numbers for `backUpCard`
 */
export function backUpInputs(pump: Pumper, sheet: DraftSheet, water_gal?: number): BackUpInputs {
  const { place, suction, required } = sheet
  const rated_gpm = sheet.pumper.rated_gpm
  const atmosphere_ft = atmosphericHead_ft(place.altitude_ft, place.barometer_inHg)
  const vapor_ft = vaporHead_ft(place.water_degF)
  const tank_gal = pump.tank_gal ?? TANK_GAL
  const known = knownOf(pump)

  const top = pump.tankHeight_ft === undefined ? { ...TANK_TOP, mark: 'assumed' as const, source: 'midship pump, tank above the frame; no source' } : known('tankHeight_ft', pump.tankHeight_ft)
  const fill = fillLine(pump, tank_gal, known)
  const cavitationAt = (flow_gpm: number) => vapor_ft + requiredHead_ft(required, Math.min(flow_gpm, rated_gpm))
  const rest_ft = Math.min(cavitationAt(0), atmosphere_ft - 1)
  const tankLine = tankToPumpLine(pump, tank_gal, atmosphere_ft - rest_ft, TANK_BOTTOM_FT + 0.2 * (top.middle - TANK_BOTTOM_FT), known)
  const loop_gpm = Math.min(loopFlow_gpm(fill.middle, 1, LOOP_PRESSURE_PSI, FILL_BACK_PSI), tankLine.middle * Math.sqrt(atmosphere_ft - rest_ft + top.middle))
  const cavitation_ft = Math.min(cavitationAt(loop_gpm), atmosphere_ft - 1)
  const curve = pumpCurve(rated_gpm, sheet.pumper.curvePoints)
  const hose_gal = hoseVolume_gal(suction.size_in, suction.length_ft) * suction.lineCount + PIPING_GAL
  const pump_gal = PUMP_GAL * Math.sqrt(rated_gpm / PUMP_RATED_GPM)
  const most_ft = atmosphere_ft - cavitation_ft

  const input = (symbol: string, { low, middle, high, mark, source }: Range): BackUpInput => ({ symbol, value: middle, unit: findUnit(symbol) ?? '', low, high, mark, source })
  return {
    rig: {
      tank_gal, tankWater_gal: water_gal, tankBottom_ft: TANK_BOTTOM_FT, tankTop_ft: Math.max(TANK_BOTTOM_FT, top.middle),
      tankToPump_gpmPerSqrtFt: tankLine.middle, tankFill_gpmPerSqrtPsi: fill.middle,
      tankToPumpRange_gpmPerSqrtFt: [tankLine.low, tankLine.high], tankFillRange_gpmPerSqrtPsi: [fill.low, fill.high],
      curve: curve.pressures_psi.map((pressure_psi, index) => ({ pressure_psi, flow_gpm: curve.flows_gpm[index] ?? 0 })).reverse(),
      hose_gal, pump_gal,
    },
    site: { lift_ft: Math.max(0, place.lift_ft), atmosphere_ft, cavitation_ft },
    openDischarge_gpm: tankLine.middle * Math.sqrt(most_ft + top.middle),
    inputs: [
      ...placeInputs(sheet),
      input('tankToPumpCoefficient', tankLine),
      input('tankFillCoefficient', fill),
      input('tankHeight_ft', top),
      input('tank_gal', pump.tank_gal === undefined ? { low: 500, middle: TANK_GAL, high: 1500, mark: 'assumed', source: 'no tank size entered' } : known('tank_gal', pump.tank_gal, 0.05)),
      input('hoseVolume_gal', { low: hose_gal - PIPING_GAL, middle: hose_gal, high: hose_gal + PIPING_GAL, mark: 'computed', source: 'bore and length of the hard suction, and some 5 gal of piping' }),
      input('pumpVolume_gal', { low: 0.7 * pump_gal, middle: pump_gal, high: 1.4 * pump_gal, mark: 'assumed', source: 'casing, by the rating; no source' }),
      input('cavitation_ft', { low: rest_ft, middle: cavitation_ft, high: cavitation_ft + 2, mark: 'computed', source: 'vapor pressure and the head this pump needs at the loop’s flow' }),
      ...judged,
    ],
  }
}

type Range = { readonly low: number; readonly middle: number; readonly high: number; readonly mark: EvidenceMark; readonly source: string }
type Known = (field: string, value: number, spread?: number) => Range

const knownOf = (pump: Pumper): Known => (field, value, spread = MEASURED_SPREAD) => {
  const evidence = pump.evidence?.[field]
  const share = evidence?.spreadShare ?? spread
  return { low: value * (1 - share), middle: value, high: value * (1 + share), mark: evidence?.mark ?? 'assumed', source: evidence?.source ?? evidence?.by ?? '' }
}

function tankToPumpLine(pump: Pumper, tank_gal: number, most_ft: number, heightAtFifth_ft: number, known: Known): Range {
  const { tankToPump_gpm, tankToPumpDrop_ft } = pump
  if (tankToPump_gpm === undefined) {
    const low = tankToPumpThatPasses(tank_gal, most_ft, heightAtFifth_ft)
    return { low, middle: low, high: BETTER_LINE_FACTOR * low, mark: 'handbook', source: `NFPA 1901: ${leastTankToPump_gpm(tank_gal)} gpm (common figure, not checked against a published table); least line that gives it, up to twice` }
  }
  const { low, middle, high, mark, source } = known('tankToPump_gpm', tankToPump_gpm)
  if (tankToPumpDrop_ft !== undefined) {
    const c = (flow_gpm: number) => tankToPumpCoefficient(flow_gpm, tankToPumpDrop_ft, 0)
    return { low: c(low), middle: c(middle), high: c(high), mark, source }
  }
  const c = (flow_gpm: number) => tankToPumpCoefficient(flow_gpm, most_ft, heightAtFifth_ft)
  return { low: c(low), middle: c(middle), high: BETTER_LINE_FACTOR * c(high), mark: 'computed', source: 'least line that gives the tested flow; the head lost at it was not measured' }
}

function fillLine(pump: Pumper, tank_gal: number, known: Known): Range {
  const { tankFill_in, tankFill_gpm } = pump
  if (tankFill_gpm !== undefined) {
    const { low, middle, high, mark, source } = known('tankFill_gpm', tankFill_gpm)
    const cf = (flow_gpm: number) => flow_gpm / loopFlow_gpm(1, 1, LOOP_PRESSURE_PSI, FILL_BACK_PSI)
    return { low: cf(low), middle: cf(middle), high: cf(high), mark, source }
  }
  const cf = (size_in: number, heads: number) => tankFillCoefficient(pipeBore_in[String(size_in)] ?? size_in, heads)
  const { low: easy, middle, high: hard } = assumedFillVelocityHeads
  if (tankFill_in !== undefined) {
    return { low: cf(tankFill_in, hard), middle: cf(tankFill_in, middle), high: cf(tankFill_in, easy), mark: 'computed', source: 'size of the line and 5 to 14 velocity heads (assumed)' }
  }
  const usual_in = tank_gal < TANK_GAL ? 1.5 : 2
  return { low: cf(1, hard), middle: cf(usual_in, middle), high: cf(2, easy), mark: 'assumed', source: 'size of the line not entered: 1 to 2 in' }
}
