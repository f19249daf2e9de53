import { findUnit } from '@/lib/units'
import type { FirstToMeasure } from '@/lib/supply'
import { fieldName } from './field-label'
import { formatShare } from './format-number'
import { formatQuantity } from './format-quantity'
import { formatMinutes, formatTime } from './format-time'
import { say } from './say'
import type { NameOf } from './say-issue'
import type { UnitSystem } from './unit-system'

/** A number that is in doubt, as far as words need it. */
export type MeasuredInput = Omit<FirstToMeasure, 'itemIds' | 'share' | 'shareError'> & { readonly itemIds: readonly string[] }

const NAMES_SHOWN = 3

/** What to go and measure: "Measure Mill pond bank: lift." */
export function measureWords({ field, itemIds, otherId, mark }: MeasuredInput, names: NameOf): string {
  const [first = ''] = itemIds
  const name = (id: string) => names(id) ?? id
  const isMeasured = mark === 'measured'
  if (otherId !== undefined) return say(isMeasured ? 'doubt.rank.road-again' : 'doubt.rank.road', { from: name(first), to: name(otherId) })
  if (field === 'rated_gpm' && itemIds.length === 1) return say('doubt.rank.pump', { name: name(first) })
  if (itemIds.length === 1) return say(isMeasured ? 'doubt.rank.again' : 'doubt.rank.one', { field: fieldName(field), name: name(first) })
  const shown = itemIds.slice(0, NAMES_SHOWN).map(name).join(', ')
  return say('doubt.rank.many', { field: fieldName(field), names: shown, more: Math.max(0, itemIds.length - NAMES_SHOWN) })
}

/** The value that is in doubt, with half its range: "1:15 ± 50%". */
export function rangeWords({ field, value, spreadShare }: MeasuredInput, system: UnitSystem): string {
  const unit = findUnit(field)
  const shown = unit === 's' ? (value < 600 ? formatTime(value) : formatMinutes(value))
    : unit ? formatQuantity(value, unit, system)
      : field.endsWith('Share') ? formatShare(value) : String(value)
  return say('doubt.rank.range', { value: shown, spread: formatShare(spreadShare) })
}
