import { placesOf, type District, type Plan } from '@/lib/plan'

/** Whether nothing says where the district lies: what is put on its bare grid would stand off the coast of Africa. */
export const isNowhere = (district: District, plan?: Pick<Plan, 'fillSites' | 'dumpSites' | 'fireGround'>): boolean =>
  !district.map && !district.bounds && placesOf(district).length === 0 &&
  (plan === undefined || (plan.fillSites.length === 0 && plan.dumpSites.length === 0 && plan.fireGround === undefined))
