import { requireNotNegative, requirePositive, requireThat } from '../issue'
import { GALLONS_PER_CUBIC_FOOT } from '../units'

/** A portable tank as it stands: upright sides, square or oblong floor, perhaps on a slope. */
export type PortableTank = {
  /** Nominal volume on level ground. */
  readonly capacity_gal: number
  /** Height of the lip above the floor. */
  readonly height_in: number
  /** Fall of the ground over distance, 0 to 0.5; default level. */
  readonly slopeShare?: number
  /** Floor along the fall; default that of a square floor. */
  readonly lengthDownSlope_ft?: number
}

/**
 * Water in a portable tank by its depth at the low side.
 *
 *   level floor: V = A · h       sloping: V = W · (L h − s L²/2), or W h² / 2s while the upper floor is dry
 *
 * It spills over the low lip, so it holds no more than at h = lip height: the slope costs W s L² / 2.
 *
 * @param tank     as it stands
 * @param depth_in at the low side, 0 or more; above the lip counts as the lip
 * @returns [gal]
 * @throws RangeError if out of range
 * @source calc; slope loss noted in training bulletins and a transfer test (seen: 3,500 gal held 2,000)
 */
export function portableTankVolume_gal(tank: PortableTank, depth_in: number): number {
  requireNotNegative('depth_in', depth_in)
  const { area_sqft, length_ft, slopeShare } = floorOf(tank)
  const h = Math.min(depth_in, tank.height_in) / 12
  const width_ft = area_sqft / length_ft
  const fall_ft = slopeShare * length_ft
  const volume_cuft = h >= fall_ft ? width_ft * length_ft * (h - fall_ft / 2) : (width_ft * h * h) / (2 * slopeShare)
  return volume_cuft * GALLONS_PER_CUBIC_FOOT
}

/** What it holds to the low lip as it stands, [gal]. */
export const portableTankCapacity_gal = (tank: PortableTank): number => portableTankVolume_gal(tank, tank.height_in)

/** Depth at the low side by volume: portableTankVolume_gal solved for the depth, no more than the lip. [in] */
export function portableTankDepth_in(tank: PortableTank, volume_gal: number): number {
  requireNotNegative('volume_gal', volume_gal)
  const { area_sqft, length_ft, slopeShare } = floorOf(tank)
  const volume_cuft = volume_gal / GALLONS_PER_CUBIC_FOOT
  const fall_ft = slopeShare * length_ft
  const width_ft = area_sqft / length_ft
  const wedge_cuft = (width_ft * length_ft * fall_ft) / 2
  const h = volume_cuft >= wedge_cuft ? volume_cuft / area_sqft + fall_ft / 2 : Math.sqrt((2 * slopeShare * volume_cuft) / width_ft)
  return Math.min(tank.height_in, h * 12)
}

type Floor = { readonly area_sqft: number; readonly length_ft: number; readonly slopeShare: number }

function floorOf({ capacity_gal, height_in, slopeShare = 0, lengthDownSlope_ft }: PortableTank): Floor {
  requirePositive('capacity_gal', capacity_gal)
  requirePositive('height_in', height_in)
  requireThat(slopeShare >= 0 && slopeShare <= 0.5, 'slopeShare', slopeShare, 'from 0 to 0.5')
  const area_sqft = capacity_gal / GALLONS_PER_CUBIC_FOOT / (height_in / 12)
  const length_ft = lengthDownSlope_ft ?? Math.sqrt(area_sqft)
  requirePositive('lengthDownSlope_ft', length_ft)
  return { area_sqft, length_ft, slopeShare }
}
