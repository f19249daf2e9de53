import type { Point } from '@/lib/geo'
import { placesOf, type District, type EditBody, type Plan } from '@/lib/plan'
import { grown } from '@/lib/terrain'

/** A district is about so large around the point it is said to lie at, until roads say more: a first look shows it whole. */
const AROUND_START_M = 8000

/** Whether nothing says where the district lies: what is put on its bare grid would stand off the coast of Africa. */
export const isNowhere = (district: District, plan?: Pick<Plan, 'fillSites' | 'dumpSites' | 'fireGround'>): boolean =>
  !district.map && !district.bounds && placesOf(district).length === 0 &&
  (plan === undefined || (plan.fillSites.length === 0 && plan.dumpSites.length === 0 && plan.fireGround === undefined))

/** Says where the district lies, by a point of it. */
export const startEdit = ({ lat, lon }: Point): EditBody & { kind: 'setFields' } => ({ kind: 'setFields', set: { bounds: grown({ south: lat, north: lat, west: lon, east: lon }, AROUND_START_M) } })
