import { findHazard, type District, type Plan } from '@/lib/plan'
import { findPlanFlow_gpm } from '@/lib/supply'
import { formatAsked, formatGiven, say, type UnitSystem } from '../_text'
import type { KeptAnswer } from './kept-answers'

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

/** The flow of a plan in a list: the dependable one where its nights were drawn; never a figure of a plan that was changed since. */
export function flowWords(kept: KeptAnswer | undefined, fire: PlanFire | undefined, system: UnitSystem): string {
  if (!kept) return say('plan.list.flow', { by: 'none', flow: '' })
  const { expected_gpm, dependable_gpm } = kept
  const by = expected_gpm === undefined ? 'blocked' : dependable_gpm === undefined ? 'expected' : 'dependable'
  return say('plan.list.flow', { by, flow: formatGiven(dependable_gpm ?? expected_gpm, system, fire?.needed_gpm) })
}
