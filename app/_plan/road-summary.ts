import type { SupplyResult } from '@/lib/supply'
import { formatQuantity, formatTime, say, type UnitSystem } from '../_text'

/**
 * The road between the sites in a line: out empty and back loaded, for the two may differ by a one-way road, a posting or
 * a grade. Of the first tender that drives it.
 *
 * @returns undefined where no way is found
 */
export function roadSummary({ legs }: Pick<SupplyResult, 'legs'>, fillSiteIds: readonly string[], system: UnitSystem): string | undefined {
  const back = legs.find(({ load, fromId, travel_s }) => load === 'full' && travel_s !== null && fillSiteIds.includes(fromId))
  if (!back) return undefined
  const out = legs.find(({ load, apparatusId, fromId, toId }) => load === 'empty' && apparatusId === back.apparatusId && fromId === back.toId && toId === back.fromId)
  const words = (leg: typeof back) => say('plan.summary.road', { distance: formatQuantity(leg.distance_mi ?? undefined, 'mi', system), time: formatTime(leg.travel_s ?? 0) })
  if (!out || out.travel_s === null) return say('plan.summary.road.back', { back: words(back) })
  return words(out) === words(back) ? say('plan.summary.road.each', { way: words(back) }) : say('plan.summary.road.both', { out: words(out), back: words(back) })
}
