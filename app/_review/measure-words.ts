import type { Measure } from '@/lib/review'
import { findUnit } from '@/lib/units'
import { fieldLabel, formatQuantity, say, type NameOf, type UnitSystem } from '../_text'

/** What a measure is of, and what it says. */
export function measureWords(measure: Measure, names: NameOf, system: UnitSystem): { item: string; what: string; value: string; range: string } {
  const { itemId, field, fromId, toId, value, low, high, count, netPressure_psi } = measure
  const name = (id: string | undefined) => (id === undefined ? '' : names(id) ?? id)
  const unit = field === 'curvePoints' ? 'gpm' : findUnit(field) ?? 's'
  const words = (one: number) => formatQuantity(one, unit, system, { digits: 0 })
  return {
    item: name(itemId),
    what: field === 'curvePoints' ? say('review.measure.curve', { pressure: formatQuantity(netPressure_psi ?? 0, 'psi', system, { digits: 0 }) })
      : fromId === undefined ? fieldLabel(field) : say('review.measure.way', { from: name(fromId), to: name(toId) }),
    value: words(value),
    range: count > 1 ? say('review.measure.range', { count, low: words(low), high: words(high) }) : say('review.measure.once'),
  }
}
