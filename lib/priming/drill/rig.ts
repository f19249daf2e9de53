import { requireNotNegative, requirePositive, requireThat } from '../../issue'

/**
 * Everything the drill model knows of one pumper at one draft site: numbers only.
 * Heads are feet of water, absolute where the name says `absolute`, else above atmosphere
 * or a height. Shares run from 0 to 1. See README.md for what is physics and what is judgement.
 */
export type DrillRig = {
  // the place
  /** Atmosphere, less nothing: 33.9 at sea level. */
  readonly atmosphere_absolute_ft: number
  /** The eye cannot be pulled below this: vapour plus the head the impeller needs. */
  readonly cavitation_absolute_ft: number
  /** Water surface up to the pump's intake centre line, at the start. */
  readonly lift_ft: number
  /** Water over the strainer, at the start. */
  readonly depth_ft: number
  /** Depth over the strainer below which a whirlpool draws air: this much at no flow … */
  readonly coverAtRest_ft: number
  /** … and this much more for each 100 gpm. */
  readonly coverPer100Gpm_ft: number
  /** Free surface of the source; absent: its level stands still. */
  readonly source_sqft?: number
  // the suction
  readonly hose_gal: number
  readonly suction_gpmPerSqrtFt: number
  readonly intake_gpmPerSqrtFt: number
  /** Free area of the intake valve fully open. */
  readonly intake_sqft: number
  /** Free air let in at full vacuum through the open intake drain. */
  readonly drainAir_gpm: number
  // the pump
  readonly pump_gal: number
  /** Head at full speed and no flow. */
  readonly shutOff_ft: number
  /** Head lost per (gpm)² inside the pump. */
  readonly pumpLoss_ftPerGpm2: number
  /** Speed with the throttle closed, as a share of full speed. */
  readonly idleShare: number
  readonly speedLag_s: number
  readonly flowLag_s: number
  /** Warming of the water in the pump at full speed with no flow. */
  readonly warming_degFPerMin: number
  // the tank loop
  readonly tank_gal: number
  readonly tankToPump_gpmPerSqrtFt: number
  /** Water surface above the pump's eye, tank empty and full. */
  readonly tankBottom_ft: number
  readonly tankTop_ft: number
  /** Below this the tank outlet draws air. */
  readonly tankUncover_gal: number
  readonly tankFill_gpmPerSqrtPsi: number
  /** Pressure that lifts water up the fill line to the tank's top. */
  readonly tankFillBack_psi: number
  // the discharge
  readonly discharge_gpmPerSqrtPsi: number
  // the primer
  /** Free air moved at no vacuum; 0: no primer or a dead one. */
  readonly primer_gpm: number
  /** Vacuum at which the primer moves nothing more. */
  readonly primerVacuum_ft: number
  // judgement: tested over a range
  /** Gas share in the pump at which its head and its grip on gas are halved. */
  readonly gasLockShare: number
  readonly headExponent: number
  readonly carryExponent: number
  /** Above this many times the gas-lock share the pump binds: it loses its grip … */
  readonly bindFactor: number
  /** … until its gas is under this many times the gas-lock share. */
  readonly gripFactor: number
  /** Head left to a bound pump, as a share. */
  readonly boundHeadShare: number
  /** How fast gas rises out of a flooded pump at rest with the intake shut. */
  readonly vent_s: number
  /** How much more easily air than water passes an opening, by volume at equal pressure difference. */
  readonly airEaseFactor: number
  /** Part of the strainer's flow that is air once the whirlpool reaches it. */
  readonly whirlpoolAirShare: number
}

/** A 1,250 gpm pumper with 5 in suction at sea level: plausible values, none measured. */
export const plausibleRig: DrillRig = {
  atmosphere_absolute_ft: 33.9,
  cavitation_absolute_ft: 7,
  lift_ft: 8,
  depth_ft: 4,
  coverAtRest_ft: 0.42,
  coverPer100Gpm_ft: 0.42,
  hose_gal: 25,
  suction_gpmPerSqrtFt: 345,
  intake_gpmPerSqrtFt: 600,
  intake_sqft: 0.136,
  drainAir_gpm: 400,
  pump_gal: 12,
  shutOff_ft: 1.12 * 346,
  pumpLoss_ftPerGpm2: 41.5 / 1250 ** 2,
  idleShare: 0.45,
  speedLag_s: 1.5,
  flowLag_s: 0.25,
  warming_degFPerMin: 15,
  tank_gal: 1000,
  tankToPump_gpmPerSqrtFt: 130,
  tankBottom_ft: 0.5,
  tankTop_ft: 6,
  tankUncover_gal: 15,
  tankFill_gpmPerSqrtPsi: 45,
  tankFillBack_psi: 5,
  discharge_gpmPerSqrtPsi: 27,
  primer_gpm: 140,
  primerVacuum_ft: 26,
  gasLockShare: 0.1,
  headExponent: 6,
  carryExponent: 8,
  bindFactor: 1,
  gripFactor: 0.25,
  boundHeadShare: 0.1,
  vent_s: 8,
  airEaseFactor: 20,
  whirlpoolAirShare: 0.6,
}

const mayBeNought = new Set<keyof DrillRig>(['depth_ft', 'lift_ft', 'coverAtRest_ft', 'coverPer100Gpm_ft', 'drainAir_gpm', 'primer_gpm',
  'tankUncover_gal', 'tankFillBack_psi', 'pumpLoss_ftPerGpm2', 'whirlpoolAirShare', 'tankBottom_ft', 'warming_degFPerMin', 'idleShare', 'boundHeadShare'])

/**
 * A rig for the drill: the given numbers over `plausibleRig`.
 *
 * @param known any of the rig's numbers; the rest are assumed
 * @throws RangeError if a number is out of its range
 */
export function drillRig(known: Partial<DrillRig> = {}): DrillRig {
  const rig: DrillRig = { ...plausibleRig, ...known }
  for (const [key, value] of Object.entries(rig) as [keyof DrillRig, number | undefined][]) {
    if (value === undefined) continue
    if (mayBeNought.has(key)) requireNotNegative(key, value)
    else requirePositive(key, value)
  }
  requireThat(rig.cavitation_absolute_ft < rig.atmosphere_absolute_ft, 'cavitation_absolute_ft', rig.cavitation_absolute_ft, 'below the atmosphere')
  requireThat(rig.tankBottom_ft <= rig.tankTop_ft, 'tankBottom_ft', rig.tankBottom_ft, 'no higher than tankTop_ft')
  requireThat(rig.idleShare < 1, 'idleShare', rig.idleShare, 'below 1')
  requireThat(rig.tankUncover_gal < rig.tank_gal, 'tankUncover_gal', rig.tankUncover_gal, 'less than the tank holds')
  return rig
}
