import type { DifferenceValue, PlanDifference } from '@/lib/plan'
import { findUnit } from '@/lib/units'
import { fieldLabel, fieldName, formatMinutes, formatQuantity, formatShare, isTextKey, listWords, type NameOf, say, type UnitSystem } from '../_text'
import '../_text/areas/compare'

/** What a difference is about: "Fill site 1: bays". */
export function differenceTitle({ part, place = 1, itemIds = [], field }: PlanDifference, names: NameOf): string {
  if (field === 'tenderIds') return say('compare.part.tenders-all')
  const nameAt = (index: number) => { const id = itemIds[index]; return id === undefined ? '' : (names(id) ?? id) }
  const way = itemIds.length > 2 ? say('compare.way-by', { from: nameAt(0), to: nameAt(1), unit: nameAt(2) }) : say('compare.way', { from: nameAt(0), to: nameAt(1) })
  return say(`compare.part.${part}`, { place, name: part === 'legNotes' ? way : nameAt(0), field: part === 'plan' ? fieldWords(field, fieldLabel) : fieldWords(field, lowered) })
}

/** Labels that begin a line elsewhere stand within one here. */
const lowered = (field: string): string => { const name = fieldName(field); return `${name.charAt(0).toLowerCase()}${name.slice(1)}` }

/** A field, or one within another: "size, hard suction". */
function fieldWords(path: string, word: (field: string) => string): string {
  const [outer = '', inner] = path.split('.')
  return inner === undefined ? word(outer.replace(/Ids?$/, '')) : say('compare.within', { field: word(inner), outer: fieldName(outer) })
}

/** What one plan says there. */
export function differenceValue(field: string, value: DifferenceValue | undefined, names: NameOf, system: UnitSystem): string {
  if (value === undefined) return say('compare.none-said')
  if (typeof value === 'boolean') return say(value ? 'compare.yes' : 'compare.no')
  if (typeof value === 'object') return value.length === 0 ? say('compare.none-said') : listWords(value.map((id) => names(id) ?? id))
  if (typeof value === 'string') {
    const key = `choice.${field.split('.').at(-1) ?? field}.${value}`
    return names(value) ?? (isTextKey(key) ? say(key) : value)
  }
  const unit = findUnit(field)
  if (unit === 's') return formatMinutes(value)
  if (unit) return formatQuantity(value, unit, system)
  return /share$/i.test(field) ? formatShare(value) : String(value)
}
