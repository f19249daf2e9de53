import { requireNotNegative, requirePositive, requireThat } from '../issue'
import { GALLONS_PER_CUBIC_FOOT, POUNDS_PER_CUBIC_FOOT_OF_WATER, SECONDS_PER_MINUTE } from '../units'
import { orificeFlow_gpm } from './openings'

/** Standard gravity, 9.80665 m/s². */
const G_FTPS2 = 9.80665 / 0.3048
/** Smooth jet: little is lost in it. Assumed. */
const JET_DISCHARGE_FACTOR = 0.95
/** Square entry of a pipe, in velocity heads: textbook. */
const ENTRY_HEADS = 0.5
/** Wall friction of 8 ft or so of smooth tube and two easy bends, in velocity heads: assumed. */
const TUBE_HEADS = 1

export type JetSiphon = {
  /** Bore of the tube. */
  readonly tube_in: number
  /** Opening of the jet. */
  readonly jet_in: number
  /** Pressure behind the jet. */
  readonly drive_psi: number
  /** Level in the tank it takes from above that in the tank it fills, or above the tube's end where that stands clear of the water. */
  readonly fall_ft: number
  /** Loss at the tube's entry and along it, in its velocity heads; defaults 0.5 and 1. */
  readonly entryHeads?: number
  readonly tubeHeads?: number
}

export type JetSiphonFlow = {
  /** Out of the one tank into the other, without the drive water. 0 where the jet cannot lift so far. */
  readonly transfer_gpm: number
  /** What its pumper must give it; it comes back into the draft tank. */
  readonly drive_gpm: number
}

/**
 * Water moved between portable tanks by a tube with a jet in its entry: an upper bound.
 *
 *   fall + Qj·Vj/(g·A) + (1 − k₁)·Vs²/2g − (2 + k₂)·(Vs + Qj/A)²/2g = 0
 *
 * Momentum over the mixing part, energy before and behind it: the jet's momentum less the loss of the tube and the level
 * difference. Without a jet it is the plain siphon, V = √(2g·fall / (1 + k₁ + k₂)). Solved for Vs by bisection. Mixing
 * in a short tube is less than complete, and a kinked tube or a weed-covered entry takes more: a measured rate is better.
 *
 * @param siphon jet smaller than the tube; drive pressure 0 or more; fall of either sign
 * @throws RangeError if out of range
 * @source calc: momentum of a constant-area jet pump (textbook form); no published table of these at hand. tests/reference/openings.json
 */
export function jetSiphonFlow(siphon: JetSiphon): JetSiphonFlow {
  const { tube_in, jet_in, drive_psi, fall_ft, entryHeads = ENTRY_HEADS, tubeHeads = TUBE_HEADS } = siphon
  requirePositive('tube_in', tube_in)
  requireThat(jet_in > 0 && jet_in < tube_in, 'jet_in', jet_in, 'above 0, smaller than the tube')
  requireNotNegative('drive_psi', drive_psi)
  requireThat(Number.isFinite(fall_ft), 'fall_ft', fall_ft, 'a number')
  requireThat(entryHeads >= 0 && entryHeads <= 1, 'entryHeads', entryHeads, 'from 0 to 1')
  requireNotNegative('tubeHeads', tubeHeads)
  const drive_gpm = orificeFlow_gpm(jet_in, drive_psi, JET_DISCHARGE_FACTOR)
  const area_sqft = (Math.PI * tube_in ** 2) / 4 / 144
  const drive_cuftps = drive_gpm / GALLONS_PER_CUBIC_FOOT / SECONDS_PER_MINUTE
  const jet_ftps = JET_DISCHARGE_FACTOR * Math.sqrt((2 * G_FTPS2 * drive_psi * 144) / POUNDS_PER_CUBIC_FOOT_OF_WATER)
  const gain_ft = fall_ft + (drive_cuftps * jet_ftps) / (G_FTPS2 * area_sqft)
  const spare_ft = (drawn_ftps: number) =>
    gain_ft + ((1 - entryHeads) * drawn_ftps ** 2 - (2 + tubeHeads) * (drawn_ftps + drive_cuftps / area_sqft) ** 2) / (2 * G_FTPS2)
  if (spare_ft(0) <= 0) return { transfer_gpm: 0, drive_gpm }
  let low_ftps = 0
  let high_ftps = 1
  while (spare_ft(high_ftps) > 0) high_ftps *= 2
  for (let round = 0; round < 60; round++) {
    const middle_ftps = (low_ftps + high_ftps) / 2
    if (spare_ft(middle_ftps) > 0) low_ftps = middle_ftps
    else high_ftps = middle_ftps
  }
  return { transfer_gpm: low_ftps * area_sqft * GALLONS_PER_CUBIC_FOOT * SECONDS_PER_MINUTE, drive_gpm }
}
