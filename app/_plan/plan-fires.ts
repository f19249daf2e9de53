import { findHazard, type District, type Plan } from '@/lib/plan'
import { findPlanFlow_gpm } from '@/lib/supply'
import { formatAsked, say, type UnitSystem } from '../_text'

/** What a plan is for: its target hazard by name, and the flow that is needed, as far as either is known. */
export type PlanFire = { readonly name?: string; readonly needed_gpm?: number }

/** The fires of plans, by plan; a plan that says neither hazard nor flow has none. */
export function firesOf(district: District | undefined, plans: readonly Plan[]): ReadonlyMap<string, PlanFire> {
  const fires = new Map<string, PlanFire>()
  for (const plan of plans) {
    const hazard = district && findHazard({ district }, plan.hazardId)
    const needed_gpm = findPlanFlow_gpm(plan, hazard)
    if (hazard || needed_gpm !== undefined) fires.set(plan.id, { ...(hazard && { name: hazard.name }), ...(needed_gpm !== undefined && { needed_gpm }) })
  }
  return fires
}

export function fireWords(fire: PlanFire | undefined, system: UnitSystem): string {
  const flow = fire?.needed_gpm === undefined ? 'none' : formatAsked(fire.needed_gpm, system)
  if (fire?.name !== undefined) return say('plan.by-hazard', { name: fire.name, flow })
  return flow === 'none' ? '' : say('plan.by-need', { flow })
}
