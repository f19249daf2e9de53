import type { DoubtInput } from '@/lib/doubt'
import type { District, Plan } from '@/lib/plan'
import { FIRE_GROUND } from '@/lib/supply'
import { partHref, type PartName } from '../_links/part-href'
import { itemHref, screenHref } from '../_links/screens'

/** Where the number is entered: the card of its item, or the part of the planner. */
export function inputHref({ itemIds, otherId }: DoubtInput, district: District, plan: Plan): string {
  const [id = ''] = itemIds
  const planner = (part: PartName) => partHref(part, district.id, plan.id)
  const item = (screen: 'survey' | 'resources') => itemHref(screen, district.id, id)
  if (otherId !== undefined) return planner('road')
  if (plan.fillSites.some((site) => site.id === id)) return planner('fill')
  if (plan.dumpSites.some((site) => site.id === id)) return planner('dump')
  if (id === plan.id || id === FIRE_GROUND) return planner('fireGround')
  if ([...district.apparatus, ...district.equipment].some((one) => one.id === id)) return item('resources')
  return id === district.id ? screenHref('survey', district.id) : item('survey')
}
