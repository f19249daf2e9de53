import type { FirstToMeasure } from '../supply'
import type { RankedInput, Ranking } from './ranking'

/** What explains less than this is told together with the rest. */
const LEAST_SHARE = 0.01

/** The inputs of a ranking that are told one by one. */
export const toldInputs = (ranking: Ranking | undefined): readonly RankedInput[] => (ranking?.inputs ?? []).filter(({ share }) => share >= LEAST_SHARE)

/** The number to go and measure first: the top of the ranking of the flow, wherever it is named. Null where none explains anything. */
export function firstToMeasure(ofFlow: Ranking | undefined): FirstToMeasure | null {
  const [first] = toldInputs(ofFlow)
  if (!first) return null
  const { input: { itemIds, otherId, field, value, mark, spreadShare }, share, shareError } = first
  return { itemIds: [...itemIds], ...(otherId !== undefined && { otherId }), field, value, mark, spreadShare, share, shareError }
}
