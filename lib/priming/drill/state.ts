import { requireThat } from '../../issue'
import { GALLONS_PER_CUBIC_FOOT } from '../../units'
import type { DrillRig } from './rig'

/** What the trainee's hands do. Shares open from 0 to 1; the primer and the intake drain are 0 or 1. */
export type DrillControls = {
  throttle: number
  tankToPump: number
  tankFill: number
  intake: number
  discharge: number
  primer: number
  drain: number
}

export const controlNames = ['throttle', 'tankToPump', 'tankFill', 'intake', 'discharge', 'primer', 'drain'] as const
export type ControlName = (typeof controlNames)[number]

export const restControls: Readonly<DrillControls> = {
  throttle: 0, tankToPump: 0, tankFill: 0, intake: 0, discharge: 0, primer: 0, drain: 0,
}

/**
 * The model's memory, changed in place by `stepDrill` and by nothing else. Eight states, one of them
 * yes or no; under them the ledgers that let a test close the books, and the readings of the last step.
 * Air is counted as pressure × volume, [ft·gal]: at one temperature that is its mass.
 */
export type DrillState = {
  time_s: number
  // states
  /** Engine speed as a share of full speed. */
  speedShare: number
  /** Through the impeller, gas and water together, at the eye's pressure. */
  flow_gpm: number
  hoseAir_ftGal: number
  hoseWater_gal: number
  pumpAir_ftGal: number
  pumpWater_gal: number
  tankWater_gal: number
  /** Air bound: too much gas has been in the impeller and not enough has left it since. */
  isBound: boolean
  /** Warming of the water in the pump above what came in. */
  warm_degF: number
  // ledgers
  drawn_gal: number
  /** Tank water that ran down the suction into the source. */
  lostDown_gal: number
  discharged_gal: number
  overflow_gal: number
  primerWater_gal: number
  airIn_ftGal: number
  airOut_ftGal: number
  // readings of the last step
  eye_absolute_ft: number
  hoseTop_absolute_ft: number
  dischargePressure_psi: number
  /** Gas in the pump by volume. */
  gasShare: number
  lift_ft: number
  tankOut_gpm: number
  tankIn_gpm: number
  delivered_gpm: number
  /** Through the intake valve; negative runs back into the hose. */
  intakeWater_gpm: number
  intakeAir_gpm: number
  /** At the strainer; negative runs out to the source. */
  column_gpm: number
  /** Free air. */
  leakAir_gpm: number
  strainerAirShare: number
  isCavitating: boolean
  /** The column stands at the intake valve. */
  isColumnFull: boolean
  // working of the step, kept here so that a step allocates nothing
  pumpHead_ft: number
  carriedShare: number
  vent_gpm: number
  primer_gpm: number
  primerGasShare: number
  /** Into the pump but not through the hose's pocket: drain and whirlpool with a full column, bare outlets, open discharges. */
  otherAir_ftGalPerMin: number
  pocketAir_ftGalPerMin: number
}

export type DrillStart = {
  /** Water in the tank. */
  readonly tankWater_gal: number
  /** Share of the pump's volume that holds air: 1 drained, 0 wet. */
  readonly pumpGasShare: number
}

/** Height of the tank's water over the pump's eye. */
export const tankHead_ft = (rig: DrillRig, tankWater_gal: number): number =>
  rig.tankBottom_ft + (rig.tankTop_ft - rig.tankBottom_ft) * Math.min(1, tankWater_gal / rig.tank_gal)

/** How far the source's surface has fallen since the start. */
export const sourceDrop_ft = (rig: DrillRig, state: DrillState): number =>
  rig.source_sqft === undefined ? 0 : state.drawn_gal / (rig.source_sqft * GALLONS_PER_CUBIC_FOOT)

/**
 * The moment before the first move: hose empty of water, engine at idle, nothing flowing.
 *
 * @throws RangeError if the start does not fit the rig
 */
export function beginDrill(rig: DrillRig, start: DrillStart): DrillState {
  requireThat(start.tankWater_gal >= 0 && start.tankWater_gal <= rig.tank_gal, 'tankWater_gal', start.tankWater_gal, 'from 0 to what the tank holds')
  requireThat(start.pumpGasShare >= 0 && start.pumpGasShare <= 1, 'pumpGasShare', start.pumpGasShare, 'from 0 to 1')
  const atmosphere_ft = rig.atmosphere_absolute_ft
  return {
    time_s: 0,
    speedShare: rig.idleShare,
    flow_gpm: 0,
    hoseAir_ftGal: atmosphere_ft * rig.hose_gal,
    hoseWater_gal: 0,
    pumpAir_ftGal: start.pumpGasShare * rig.pump_gal * atmosphere_ft,
    pumpWater_gal: (1 - start.pumpGasShare) * rig.pump_gal,
    tankWater_gal: start.tankWater_gal,
    isBound: start.pumpGasShare > 0.5,
    warm_degF: 0,
    drawn_gal: 0, lostDown_gal: 0, discharged_gal: 0, overflow_gal: 0, primerWater_gal: 0, airIn_ftGal: 0, airOut_ftGal: 0,
    eye_absolute_ft: atmosphere_ft, hoseTop_absolute_ft: atmosphere_ft, dischargePressure_psi: 0, gasShare: start.pumpGasShare,
    lift_ft: rig.lift_ft, tankOut_gpm: 0, tankIn_gpm: 0, delivered_gpm: 0, intakeWater_gpm: 0, intakeAir_gpm: 0, column_gpm: 0,
    leakAir_gpm: 0, strainerAirShare: 0, isCavitating: false, isColumnFull: false,
    pumpHead_ft: 0, carriedShare: 0, vent_gpm: 0, primer_gpm: 0, primerGasShare: 0, otherAir_ftGalPerMin: 0, pocketAir_ftGalPerMin: 0,
  }
}
