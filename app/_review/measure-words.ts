import type { Measure } from '@/lib/review'
import { findUnit, type Unit } from '@/lib/units'
import { fieldLabel, formatQuantity, say, type NameOf, type UnitSystem } from '../_text'
import '../_text/areas/review'

/** A figure as a log can give it: whole, times in minutes and seconds. */
export const formatMeasured = (value: number, unit: Unit, system: UnitSystem): string => formatQuantity(value, unit, system, unit === 's' ? {} : { digits: 0 })

/** What a measure is of, and what it says. */
export function measureWords(measure: Measure, names: NameOf, system: UnitSystem): { item: string; what: string; value: string; range: string } {
  const { itemId, field, fromId, toId, value, low, high, count, netPressure_psi } = measure
  const name = (id: string | undefined) => (id === undefined ? '' : names(id) ?? id)
  const unit = field === 'curvePoints' ? 'gpm' : findUnit(field) ?? 's'
  const words = (one: number) => formatMeasured(one, unit, system)
  return {
    item: name(itemId),
    what: field === 'curvePoints' ? say('review.measure.curve', { pressure: formatQuantity(netPressure_psi ?? 0, 'psi', system, { digits: 0 }) })
      : fromId === undefined ? fieldLabel(field) : say('review.measure.way', { from: name(fromId), to: name(toId) }),
    value: words(value),
    range: count < 2 ? say('review.measure.once') : words(low) === words(high) ? say('review.measure.same', { count, value: words(low) }) : say('review.measure.range', { count, low: words(low), high: words(high) }),
  }
}
