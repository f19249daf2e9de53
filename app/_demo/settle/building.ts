import type { Spot } from '../frame'
import type { Ring } from '../geometry/polygon'
import { offset } from '../geometry/spot'
import type { Tags } from '../roads/network'

export type Building = { ring: Ring; tags: Tags }

/** A rectangle about its middle, its long side along the heading. */
export const block = (middle: Spot, along: Spot, length_m: number, width_m: number): Spot[] => [
  offset(middle, along, -length_m / 2, -width_m / 2), offset(middle, along, length_m / 2, -width_m / 2),
  offset(middle, along, length_m / 2, width_m / 2), offset(middle, along, -length_m / 2, width_m / 2),
]

/** A house with an ell behind: the older kind. */
export const house = (middle: Spot, along: Spot, length_m: number, width_m: number, ell_m: number): Spot[] =>
  ell_m <= 0
    ? block(middle, along, length_m, width_m)
    : [
      offset(middle, along, -length_m / 2, -width_m / 2), offset(middle, along, length_m / 2, -width_m / 2),
      offset(middle, along, length_m / 2, width_m / 2), offset(middle, along, length_m * 0.1, width_m / 2),
      offset(middle, along, length_m * 0.1, width_m / 2 + ell_m), offset(middle, along, -length_m * 0.32, width_m / 2 + ell_m),
      offset(middle, along, -length_m * 0.32, width_m / 2), offset(middle, along, -length_m / 2, width_m / 2),
    ]

export function round(middle: Spot, radius_m: number): Spot[] {
  const ring: Spot[] = []
  for (let k = 0; k < 12; k++) ring.push({ x: middle.x + radius_m * Math.cos((k * Math.PI) / 6), y: middle.y + radius_m * Math.sin((k * Math.PI) / 6) })
  return ring
}
