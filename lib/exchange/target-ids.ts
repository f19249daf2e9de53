import { FIRE_GROUND } from '../plan'
import type { Target } from './place-item'

/** Every id that is in use in a district and a plan. */
export function idsOf({ district, plan }: Target): Set<string> {
  const lists = [...Object.values(district), ...Object.values(plan ?? {})].filter(Array.isArray) as { id?: string }[][]
  return new Set([FIRE_GROUND, ...lists.flat().flatMap(({ id }) => id ?? [])])
}
