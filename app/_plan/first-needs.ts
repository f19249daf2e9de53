import { findHazard, type District, type Plan } from '@/lib/plan'
import { FIRE_GROUND, findPlace, findPlanFlow_gpm, isWaterNamed } from '@/lib/supply'

/** What a first answer needs, in the order an officer gives it; the rest is assumed and said so. */
export const firstNeeds = ['fillSite', 'dumpSite', 'fireGround', 'pumper', 'tender'] as const
export type FirstNeed = (typeof firstNeeds)[number]

/** Those placed on the map, in the order in which they are asked for one after the other. */
export const firstPlaces = ['fillSite', 'dumpSite', 'fireGround'] as const satisfies readonly FirstNeed[]

/** Whether the water of every fill site is named. */
export const isAllWaterNamed = (district: District, plan: Plan): boolean => plan.fillSites.every((site) => isWaterNamed({ district, plan }, site))

/** What comes next: without it the answer stands, but not when there is water, nor whether it is enough. */
export const nextNeeds = ['firstDue', 'need'] as const
export type NextNeed = (typeof nextNeeds)[number]

/** What the plan still lacks to say when there is water, and whether it is enough. */
export function missingNext(district: District, plan: Plan): NextNeed[] {
  const engine = district.apparatus.find(({ id }) => id === plan.firstDueId)
  const has: Readonly<Record<NextNeed, boolean>> = {
    firstDue: Boolean(engine?.tank_gal),
    need: findPlanFlow_gpm(plan, findHazard({ district }, plan.hazardId)) !== undefined,
  }
  return nextNeeds.filter((need) => !has[need])
}

/** What the plan still lacks for a first answer. */
export function missingNeeds(district: District, plan: Plan): FirstNeed[] {
  const has: Readonly<Record<FirstNeed, boolean>> = {
    fillSite: plan.fillSites.length > 0,
    dumpSite: plan.dumpSites.length > 0,
    fireGround: findPlace({ district, plan }, FIRE_GROUND) !== undefined,
    pumper: plan.fillSites.some(({ pumperId, rate_gpm }) => pumperId !== undefined || rate_gpm !== undefined),
    tender: plan.tenders.length > 0,
  }
  return firstNeeds.filter((need) => !has[need])
}
