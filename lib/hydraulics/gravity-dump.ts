import { requireNotNegative, requirePositive, requireThat } from '../issue'
import { psiFromFeetOfWater } from '../units'
import { orificeFlow_gpm } from './openings'

/** A dump opening: round, or a square or oblong one. */
export type DumpOpening = { readonly diameter_in: number } | { readonly width_in: number; readonly height_in: number }

/** Square-edged full opening. */
export const DEFAULT_DUMP_FACTOR = 0.8

/** Diameter of the round opening of the same area, [in]. */
export function openingDiameter_in(opening: DumpOpening): number {
  return 'diameter_in' in opening ? opening.diameter_in : Math.sqrt((4 * opening.width_in * opening.height_in) / Math.PI)
}

/**
 * Flow from a tank's dump opening under a head of water: an upper bound.
 *
 *   Q = 29.84 · Cd · d² · √(0.433 · head), no more than the vent and baffles let through
 *
 * @param opening         round or oblong, above 0
 * @param head_ft         water over the middle of the opening, 0 or more
 * @param dischargeFactor Cd; default 0.8
 * @param cap_gpm         most that vents and baffles let through; absent: no cap known
 * @returns [gpm]
 * @throws RangeError if out of range
 * @source calc; no published table at hand. Baffles and vents rule in practice (handbook lesson, seen), tests/reference/openings.json
 */
export function gravityDump_gpm(opening: DumpOpening, head_ft: number, dischargeFactor = DEFAULT_DUMP_FACTOR, cap_gpm = Infinity): number {
  requireNotNegative('head_ft', head_ft)
  requireThat(cap_gpm > 0, 'cap_gpm', cap_gpm, 'above 0')
  return Math.min(cap_gpm, orificeFlow_gpm(openingDiameter_in(opening), psiFromFeetOfWater(head_ft), dischargeFactor))
}

export type DumpingTank = {
  readonly tank_gal: number
  /** Part of it given at each dump, from the top. */
  readonly usable_gal: number
  /** Water over the middle of the opening, tank full. The tank's sides are taken as upright. */
  readonly fullHead_ft: number
  /** Water over the middle of the opening when the tank is empty: 0, or more for an opening below the floor. */
  readonly emptyHead_ft?: number
  readonly opening: DumpOpening
  readonly dischargeFactor?: number
  readonly cap_gpm?: number
}

/**
 * Dump rates of a tank by equal parts of its load, first part first.
 *
 *   head falls in line with volume; time of a part = ∫ dV / Q(h), in closed form: constant under the cap,
 *   2 ΔV (√h₁ − √h₂) / (k (h₁ − h₂)) under gravity
 *
 * Each part's rate is its volume over its time, so whole-part times are exact.
 *
 * @param tank      volumes and heads; usable no more than the tank
 * @param partCount 1 or more; default 8
 * @returns rates, [gpm], never rising
 * @throws RangeError if out of range
 * @source calc, from gravityDump_gpm
 */
export function dumpRates_gpm(tank: DumpingTank, partCount = 8): number[] {
  const { tank_gal, usable_gal, fullHead_ft, emptyHead_ft = 0, opening, dischargeFactor = DEFAULT_DUMP_FACTOR, cap_gpm = Infinity } = tank
  requirePositive('tank_gal', tank_gal)
  requireThat(usable_gal > 0 && usable_gal <= tank_gal, 'usable_gal', usable_gal, `above 0, no more than the tank of ${tank_gal}`)
  requireThat(fullHead_ft > emptyHead_ft && emptyHead_ft >= 0, 'fullHead_ft', fullHead_ft, `above the empty head of ${emptyHead_ft}`)
  requireThat(Number.isInteger(partCount) && partCount >= 1, 'partCount', partCount, 'a whole number of 1 or more')
  // k of Q = k √h, the rate at one foot of head.
  const k = gravityDump_gpm(opening, 1, dischargeFactor)
  const perFoot_gal = tank_gal / (fullHead_ft - emptyHead_ft)
  const capHead_ft = (cap_gpm / k) ** 2
  const headAt = (given_gal: number) => Math.max(0, fullHead_ft - given_gal / perFoot_gal)
  const part_gal = usable_gal / partCount
  return Array.from({ length: partCount }, (_, i) => {
    const high = headAt(i * part_gal), low = headAt((i + 1) * part_gal)
    const capped_ft = Math.max(0, high - Math.max(low, Math.min(high, capHead_ft)))
    const free = high - capped_ft
    const minutes = perFoot_gal * ((capped_ft > 0 ? capped_ft / cap_gpm : 0) + (2 * (Math.sqrt(free) - Math.sqrt(low))) / k)
    return part_gal / minutes
  })
}
