import { inchesOfMercuryFromFeetOfWater } from '../units'
import { issue, requireNotNegative, requirePositive, requireThat, type Issue } from '../issue'
import { primerCapacity_gpm, type Primer } from './primer'

export type PrimeTimeAsk = {
  readonly primer: Primer
  /** Suction hose, strainer to intake valve. */
  readonly hose_gal: number
  /** Pump and intake piping above the hose. */
  readonly pump_gal: number
  readonly lift_ft: number
  /** Pump's highest point over the intake's centre line; the water must get there too. */
  readonly pumpTop_ft?: number
  /** Atmosphere at the site, feet of water. */
  readonly atmosphere_ft: number
  /** Decides the limit: 30 s to 1,250 gpm, 45 s from 1,500. */
  readonly rated_gpm: number
  /** A front, rear or other auxiliary intake of 4 in or more. */
  readonly hasAuxiliaryIntake?: boolean
  /** What that intake's piping holds: the allowance stands from 1 cubic foot, 7.48 gal. */
  readonly auxiliary_gal?: number
}

export type PrimeTime = {
  /** Air to remove, at atmospheric pressure. */
  readonly air_gal: number
  /** Absent when the primer cannot lift the water to the pump's top. */
  readonly expected_s?: number
  /** Part of it until the water stands at the intake. */
  readonly hose_s?: number
  /** The usual limit for this pump, with the allowance where it applies. */
  readonly limit_s: number
  readonly allowance_s: number
  /** Vacuum that holds the water at the pump's top. */
  readonly vacuum_ft: number
  /** Free capacity with which this prime takes just the limit. */
  readonly neededCapacity_gpm?: number
  readonly issues: readonly Issue[]
}

const PARTS = 400
/** 1 cubic foot. */
const ALLOWANCE_FROM_GAL = 1728 / 231
const ALLOWANCE_S = 15

/** Limits of the rating standard: 30 s to 1,250 gpm, 45 s from 1,500; between them the shorter is kept. Source: test-service page citing NFPA, seen second hand. */
export const primeLimit_s = (rated_gpm: number): number => (rated_gpm >= 1500 ? 45 : 30)

/**
 * Time the installed primer should need.
 *
 * The column follows the vacuum, `Vw/Vh = v/h`, so the air left at vacuum v is
 * `m = (Pa − v)·(Vp + Vh·(1 − v/h))`, and
 *
 *   t = ∫ −dm / ((Pa − v)·S(v)), v from 0 to h;  then  Vp / S(h) to fill the pump
 *
 * @param ask volumes in gal, heads in ft, all 0 or more; primer above 0
 * @returns the time against the limit; issues `primer-cannot-lift` (block), `prime-over-limit` (warn)
 * @throws RangeError if a number is out of range
 * @source "volume to exhaust / net primer capacity at that lift" (pump handbook page, seen), integrated
 *   over the falling capacity; the hose's slope is taken as even
 */
export function primeTime(ask: PrimeTimeAsk): PrimeTime {
  requireNotNegative('hose_gal', ask.hose_gal)
  requirePositive('pump_gal', ask.pump_gal)
  requireNotNegative('lift_ft', ask.lift_ft)
  requirePositive('atmosphere_ft', ask.atmosphere_ft)
  requirePositive('rated_gpm', ask.rated_gpm)
  const top_ft = ask.pumpTop_ft ?? 0
  requireNotNegative('pumpTop_ft', top_ft)
  requireThat(primerCapacity_gpm(ask.primer, 0) > 0, 'primer', ask.primer.capacity_gpm, 'one that moves air')

  const allowance_s = ask.hasAuxiliaryIntake && (ask.auxiliary_gal ?? 0) >= ALLOWANCE_FROM_GAL ? ALLOWANCE_S : 0
  const limit_s = primeLimit_s(ask.rated_gpm) + allowance_s
  const air_gal = ask.hose_gal + ask.pump_gal
  const vacuum_ft = ask.lift_ft + top_ft
  const most_ft = Math.min(ask.primer.stall_ft, ask.atmosphere_ft)
  if (vacuum_ft >= most_ft) {
    return { air_gal, limit_s, allowance_s, vacuum_ft,
      issues: [issue('primer-cannot-lift', 'block', [], { needed_inHg: inchesOfMercuryFromFeetOfWater(vacuum_ft), most_inHg: inchesOfMercuryFromFeetOfWater(most_ft), short_inHg: inchesOfMercuryFromFeetOfWater(vacuum_ft - most_ft) })] }
  }
  const hose_s = hoseTime_s(ask)
  const expected_s = hose_s + pumpTime_s(ask, vacuum_ft)
  const neededCapacity_gpm = (ask.primer.capacity_gpm * expected_s) / limit_s
  const issues = expected_s > limit_s
    ? [issue('prime-over-limit', 'warn', [], { expected_s, limit_s, neededCapacity_gpm })] : []
  return { air_gal, expected_s, hose_s, limit_s, allowance_s, vacuum_ft, neededCapacity_gpm, issues }
}

/** Air mass over atmosphere and pump at vacuum v, [ft·gal]. */
function airAt(ask: PrimeTimeAsk, vacuum_ft: number): number {
  const dryShare = ask.lift_ft > 0 ? 1 - vacuum_ft / ask.lift_ft : 0
  return (ask.atmosphere_ft - vacuum_ft) * (ask.pump_gal + ask.hose_gal * dryShare)
}

function hoseTime_s(ask: PrimeTimeAsk): number {
  // With no lift the hose fills at no vacuum.
  if (ask.lift_ft === 0) return (60 * ask.hose_gal) / ask.primer.capacity_gpm
  let time_min = 0
  for (let part = 0; part < PARTS; part++) {
    const from_ft = (ask.lift_ft * part) / PARTS
    const to_ft = (ask.lift_ft * (part + 1)) / PARTS
    const middle_ft = (from_ft + to_ft) / 2
    time_min += (airAt(ask, from_ft) - airAt(ask, to_ft)) / ((ask.atmosphere_ft - middle_ft) * primerCapacity_gpm(ask.primer, middle_ft))
  }
  return 60 * time_min
}

const pumpTime_s = (ask: PrimeTimeAsk, vacuum_ft: number): number => (60 * ask.pump_gal) / primerCapacity_gpm(ask.primer, vacuum_ft)
