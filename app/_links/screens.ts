import type { IconName } from '../_look/icon'

/** Screens of a district, in the order of the job. */
export const screens = ['survey', 'resources', 'plan', 'exercise', 'log', 'drill', 'book'] as const
export type Screen = (typeof screens)[number]

export const screenIcons: Readonly<Record<Screen, IconName>> = { survey: 'survey', resources: 'resources', plan: 'plan', exercise: 'exercise', log: 'log', drill: 'drill', book: 'print' }

/** Address of a screen of a district; of one plan where `planId` is given. */
export function screenHref(screen: Screen, districtId: string, planId?: string): string {
  const base = `/district/${encodeURIComponent(districtId)}/${screen}`
  return planId === undefined ? base : `${base}/${encodeURIComponent(planId)}`
}

/** Address of a place in the survey, or of a unit or piece of equipment among the resources, with its card open. */
export const itemHref = (screen: 'survey' | 'resources', districtId: string, itemId: string): string => `${screenHref(screen, districtId)}?item=${encodeURIComponent(itemId)}`
