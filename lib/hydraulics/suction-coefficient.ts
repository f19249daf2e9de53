import { requireThat } from '../issue'
import { velocityHead_ft } from './velocity-head'

/** Loss in one line of hard suction at 1,000 gpm; everything in it scales with the square of the flow. */
export type SuctionCoefficient = {
  /** Strainer and entrance, [ft]. */
  readonly entrance_ft: number
  /** Each foot of hose, [ft]. */
  readonly perFoot_ft: number
  /** `handbook`: a size of the table. `between`: interpolated between two sizes of it. `beyond`: outside it. */
  readonly from: 'handbook' | 'between' | 'beyond'
}

/** One pair of numbers a size carries the whole table: loss of 20 ft with strainer, and of 10 ft more, at 1,000 gpm. */
const table = [
  { size_in: 4, twentyFeet_ft: 20.0, tenMore_ft: 5.2 },
  { size_in: 4.5, twentyFeet_ft: 14.3, tenMore_ft: 2.8 },
  { size_in: 5, twentyFeet_ft: 8.4, tenMore_ft: 1.6 },
  { size_in: 6, twentyFeet_ft: 3.4, tenMore_ft: 0.6 },
] as const

const rows = table.map(({ size_in, twentyFeet_ft, tenMore_ft }) =>
  ({ size_in, entrance_ft: twentyFeet_ft - 2 * tenMore_ft, perFoot_ft: tenMore_ft / 10 }))

/** Under 4 in, entrance and strainer together: the table's four sizes lie between 0.95 and 1.4. */
const ENTRANCE_VELOCITY_HEADS = 1.2
/** Exponent of the diameter in Hazen-Williams friction. */
const FRICTION_EXPONENT = 4.87

/**
 * Loss coefficients of hard suction by size.
 *
 *   loss(Q) = (entrance + perFoot · length) · (Q / 1000)²
 *
 * Sizes 4, 4.5, 5 and 6 in are the table's. Between them both parts follow a power of the diameter from row to row.
 * Beyond it: under 4 in 1.2 velocity heads for entrance and strainer, over 6 in the 6 in row's share of the velocity
 * head; hose friction from the nearest row by diameter^−4.87.
 *
 * @param size_in nominal bore, 1.5 to 10; outside 4 to 6 it is extrapolated and says so
 * @returns coefficients at 1,000 gpm through one line
 * @throws RangeError outside 1.5 to 10 in
 * @source pumper-test standard's table of suction losses (memory, moderate confidence), tests/reference/hard-suction.json;
 *   beyond the table: Hazen-Williams form and minor-loss practice, not measured
 */
export function suctionCoefficient(size_in: number): SuctionCoefficient {
  requireThat(size_in >= 1.5 && size_in <= 10, 'size_in', size_in, 'from 1.5 to 10')
  const above = rows.findIndex((row) => row.size_in >= size_in)
  const upper = above < 0 ? undefined : rows[above]
  if (upper?.size_in === size_in) return { entrance_ft: upper.entrance_ft, perFoot_ft: upper.perFoot_ft, from: 'handbook' }
  const lower = above < 0 ? rows[rows.length - 1] : rows[above - 1]
  if (upper && lower) {
    const share = Math.log(size_in / lower.size_in) / Math.log(upper.size_in / lower.size_in)
    const between = (a: number, b: number) => a * (b / a) ** share
    return {
      entrance_ft: between(lower.entrance_ft, upper.entrance_ft),
      perFoot_ft: between(lower.perFoot_ft, upper.perFoot_ft),
      from: 'between',
    }
  }
  const nearest = lower ?? upper
  requireThat(nearest !== undefined, 'size_in', size_in, 'a bore')
  return {
    entrance_ft: upper ? ENTRANCE_VELOCITY_HEADS * velocityHead_ft(1000, size_in) : nearest.entrance_ft * (nearest.size_in / size_in) ** 4,
    perFoot_ft: nearest.perFoot_ft * (nearest.size_in / size_in) ** FRICTION_EXPONENT,
    from: 'beyond',
  }
}
