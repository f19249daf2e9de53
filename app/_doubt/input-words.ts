import type { DoubtInput } from '@/lib/doubt'
import type { District, Plan } from '@/lib/plan'
import { findUnit } from '@/lib/units'
import { FIRE_GROUND } from '@/lib/supply'
import { fieldName, formatMinutes, formatQuantity, formatShare, formatTime, say, type NameOf, type UnitSystem } from '../_text'
import { screenHref } from '../_ui/screens'

const NAMES_SHOWN = 3

/** What to go and measure: "Measure Mill pond bank: lift." */
export function measureWords({ field, itemIds, otherId, mark }: DoubtInput, names: NameOf): string {
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
export function rangeWords({ field, value, spreadShare }: DoubtInput, system: UnitSystem): string {
  const unit = findUnit(field)
  const shown = unit === 's' ? (value < 600 ? formatTime(value) : formatMinutes(value))
    : unit ? formatQuantity(value, unit, system)
      : field.endsWith('Share') ? formatShare(value) : String(value)
  return say('doubt.rank.range', { value: shown, spread: formatShare(spreadShare) })
}

/** Where the number is entered: the card of its item, or the part of the planner. */
export function inputHref({ itemIds, otherId }: DoubtInput, district: District, plan: Plan): string {
  const [id = ''] = itemIds
  const planner = (part: string) => `${screenHref('plan', district.id, plan.id)}?part=${part}`
  const item = (screen: 'survey' | 'resources') => `${screenHref(screen, district.id)}?item=${encodeURIComponent(id)}`
  if (otherId !== undefined) return planner('road')
  if (plan.fillSites.some((site) => site.id === id)) return planner('fill')
  if (plan.dumpSites.some((site) => site.id === id)) return planner('dump')
  if (id === plan.id || id === FIRE_GROUND) return planner('fireGround')
  if ([...district.apparatus, ...district.equipment].some((one) => one.id === id)) return item('resources')
  return id === district.id ? screenHref('survey', district.id) : item('survey')
}
