import { atmosphericHead_ft, calibrateRequiredHead, hoseVolume_gal, suctionLossAt1000gpm_ft, vaporHead_ft, type IntakePlace } from '../../hydraulics'
import { assumedFillVelocityHeads, loopFlow_gpm, pipeBore_in, tankFillCoefficient, tankToPumpCoefficient } from '../tank-loop'
import { leastTankToPump_gpm, strainerCoverLine } from '../tank-line-standards'
import { LOOP_PRESSURE_PSI } from '../back-up-window'
import { drillRig, plausibleRig, type DrillRig } from './rig'

/** What a district knows of a pumper, as far as the drill asks; what is absent is assumed. */
export type DrillPumper = {
  readonly rated_gpm?: number
  readonly tank_gal?: number
  /** Water of a full tank above the pump's eye. */
  readonly tankHeight_ft?: number
  /** A flow from tank to pump and the head lost at it. */
  readonly tankToPump_gpm?: number
  readonly tankToPumpDrop_ft?: number
  readonly tankFill_in?: number
  /** Flow of the tank fill at the loop's pressure, wide open; goes before the size. */
  readonly tankFill_gpm?: number
  /** Air the primer moves free; 0: none fitted. */
  readonly primer_gpm?: number
  readonly dryVacuum_inHg?: number
  readonly dryVacuumAltitude_ft?: number
  readonly suction_in?: number
  readonly suction_ft?: number
  readonly suctionLineCount?: number
  readonly intake?: IntakePlace
}

/** What a district knows of a draft site. */
export type DrillSite = {
  readonly lift_ft?: number
  /** Water over the strainer. */
  readonly depth_ft?: number
  readonly altitude_ft?: number
  readonly water_degF?: number
}

/** Intake piping beside the hose, [gal]. Judgement. */
const PIPING_GAL = 4.6
const DEFAULT = { rated_gpm: 1250, suction_in: 5, suction_ft: 20, water_degF: 60 } as const
/** Head that a tank-to-pump line of its least flow loses while nobody has measured it: the plausible 130 gpm/√ft at 500 gpm. Judgement. */
const ASSUMED_DROP_FT = (500 / plausibleRig.tankToPump_gpmPerSqrtFt) ** 2

/**
 * The drill's rig of a pumper at a site.
 *
 * Suction loss, atmosphere, vapour and the head the pump needs come from the laws of hydraulics;
 * what nobody has said is taken from `plausibleRig` or the least a standard allows.
 *
 * @returns a rig that `drillRig` has checked
 * @throws RangeError if a number is out of its range
 */
export function rigFrom(pumper: DrillPumper = {}, site: DrillSite = {}): DrillRig {
  const { rated_gpm = DEFAULT.rated_gpm, suction_in = DEFAULT.suction_in, suction_ft = DEFAULT.suction_ft, suctionLineCount = 1, intake = 'side',
    tank_gal = plausibleRig.tank_gal } = pumper
  const loss_ft = suctionLossAt1000gpm_ft({ size_in: suction_in, length_ft: suction_ft, lineCount: suctionLineCount, intake })
  const required = calibrateRequiredHead({ rated_gpm, dryVacuum_inHg: pumper.dryVacuum_inHg, dryVacuumAltitude_ft: pumper.dryVacuumAltitude_ft })
  const bore_ft = suction_in / 12
  return drillRig({
    atmosphere_absolute_ft: atmosphericHead_ft(site.altitude_ft ?? 0),
    cavitation_absolute_ft: vaporHead_ft(site.water_degF ?? DEFAULT.water_degF) + required.a_ft,
    lift_ft: Math.max(0, site.lift_ft ?? plausibleRig.lift_ft),
    depth_ft: site.depth_ft ?? plausibleRig.depth_ft,
    ...strainerCoverLine(suction_in),
    hose_gal: hoseVolume_gal(suction_in, suction_ft) * suctionLineCount + PIPING_GAL,
    suction_gpmPerSqrtFt: 1000 / Math.sqrt(loss_ft),
    intake_gpmPerSqrtFt: plausibleRig.intake_gpmPerSqrtFt * (suction_in / DEFAULT.suction_in) ** 2,
    intake_sqft: (Math.PI / 4) * bore_ft ** 2,
    pump_gal: plausibleRig.pump_gal * Math.sqrt(rated_gpm / DEFAULT.rated_gpm),
    pumpLoss_ftPerGpm2: plausibleRig.pumpLoss_ftPerGpm2 * (DEFAULT.rated_gpm / rated_gpm) ** 2,
    tank_gal,
    tankUncover_gal: Math.min(plausibleRig.tankUncover_gal, 0.02 * tank_gal),
    tankTop_ft: Math.max(plausibleRig.tankBottom_ft, pumper.tankHeight_ft ?? plausibleRig.tankTop_ft),
    tankToPump_gpmPerSqrtFt: tankLine(pumper, tank_gal),
    tankFill_gpmPerSqrtPsi: fillLine(pumper, tank_gal),
    primer_gpm: pumper.primer_gpm ?? plausibleRig.primer_gpm,
  })
}

const tankLine = ({ tankToPump_gpm, tankToPumpDrop_ft }: DrillPumper, tank_gal: number): number =>
  tankToPumpCoefficient(tankToPump_gpm ?? leastTankToPump_gpm(tank_gal), tankToPumpDrop_ft ?? ASSUMED_DROP_FT, 0)

function fillLine({ tankFill_in, tankFill_gpm }: DrillPumper, tank_gal: number): number {
  if (tankFill_gpm !== undefined) return tankFill_gpm / loopFlow_gpm(1, 1, LOOP_PRESSURE_PSI, plausibleRig.tankFillBack_psi)
  const size_in = tankFill_in ?? (tank_gal < 1000 ? 1.5 : 2)
  return tankFillCoefficient(pipeBore_in[String(size_in)] ?? size_in, assumedFillVelocityHeads.middle)
}
