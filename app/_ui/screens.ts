import type { IconName } from '../_look/icon'

/** Screens of a district, in the order of the job. */
export const screens = ['survey', 'resources', 'plan', 'exercise', 'drill'] as const
export type Screen = (typeof screens)[number]

export const screenIcons: Readonly<Record<Screen, IconName>> = { survey: 'survey', resources: 'resources', plan: 'plan', exercise: 'exercise', drill: 'drill' }

/** Address of a screen of a district; of one plan where `planId` is given. */
export function screenHref(screen: Screen, districtId: string, planId?: string): string {
  const base = `/district/${encodeURIComponent(districtId)}/${screen}`
  return planId === undefined ? base : `${base}/${encodeURIComponent(planId)}`
}
