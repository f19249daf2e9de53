import { requirePositive } from '../issue'
import type { SuctionSetup } from './suction-setup'

/** Where the standard lets a pump be rated up to 2,000 ft; the classical table is for 1,000 ft: the smaller promise. */
export const RATING_ALTITUDE_FT = 1_000
export const RATING_WATER_DEGF = 60

/** One row of the rating: the suction a pump of this size makes its rated flow through, and the lift. */
export type RatedSuction = { readonly lift_ft: number; readonly suction: SuctionSetup }

const row = (upTo_gpm: number, size_in: number, lineCount: number, lift_ft: number) => ({ upTo_gpm, size_in, lineCount, lift_ft })

/** Hose as in the 10 ft row of the classical table, outside it as in the standard's table. */
const rows = [
  row(300, 3, 1, 10), row(700, 4, 1, 10), row(750, 4.5, 1, 10), row(1_000, 5, 1, 10), row(1_500, 6, 1, 10),
  row(1_750, 6, 2, 8), row(2_000, 6, 2, 6), row(2_500, 6, 3, 6),
] as const
const largest = row(Infinity, 6, 4, 6)

/** The widest the standard's table allows, where it is wider than the classical table's hose. */
const widest = [row(1_000, 6, 1, 10), row(1_250, 6, 1, 10), row(1_500, 6, 2, 10)] as const

/**
 * Suction and lift that a fire pump of this rating is assumed to have been rated with: 20 ft of hose with a strainer.
 *
 * Ratings between rows take the next larger row, whose wider hose makes the smaller promise. The standard allows up to
 * 6 in for 1,000 gpm and two lines for 1,500; a pump rated that way can do less through the hose here: give its own.
 *
 * @param rated_gpm above 0
 * @throws RangeError if not positive
 * @source classical discharge-at-lifts table, 10 ft row (memory, moderate); pump-rating clause table for other sizes (memory, moderate)
 */
export function ratedSuction(rated_gpm: number): RatedSuction {
  requirePositive('rated_gpm', rated_gpm)
  return fromRow(rows.find(({ upTo_gpm }) => rated_gpm <= upTo_gpm) ?? largest)
}

/**
 * The widest suction the standard lets a pump of this rating be rated through, if wider than `ratedSuction` says.
 *
 * A pump rated so needs more head at its eye: what it promises through other hose is the smallest there is.
 *
 * @param rated_gpm above 0
 * @source pump-rating clause table: 1,000 gpm up to 6 in, 1,500 gpm up to two 6 in (memory, high)
 */
export function findWidestRatedSuction(rated_gpm: number): RatedSuction | undefined {
  if (rated_gpm <= 750) return undefined
  const found = widest.find(({ upTo_gpm }) => rated_gpm <= upTo_gpm)
  if (!found) return undefined
  const usual = ratedSuction(rated_gpm).suction
  return found.size_in > usual.size_in || found.lineCount > usual.lineCount ? fromRow(found) : undefined
}

function fromRow({ size_in, lineCount, lift_ft }: { size_in: number; lineCount: number; lift_ft: number }): RatedSuction {
  return { lift_ft, suction: { size_in, lineCount, length_ft: 20, strainer: 'barrel' } }
}
