import { markOf } from '@/lib/evidence'
import type { Apparatus, District, Plan } from '@/lib/plan'
import { isAllWaterNamed } from './first-needs'

/** What turns a first answer into a plan to rely on, in the order in which it pays. */
export const ownNeeds = ['water', 'lift', 'vehicles', 'stations', 'dump', 'roads'] as const
export type OwnNeed = (typeof ownNeeds)[number]

const unitsOf = (district: Pick<District, 'apparatus'>, { fillSites, dumpSites, tenders }: Plan): Apparatus[] => {
  const named = new Set([...fillSites.map(({ pumperId }) => pumperId), ...dumpSites.map(({ pumperId }) => pumperId), ...tenders.map(({ tenderId }) => tenderId)])
  return district.apparatus.filter(({ id }) => named.has(id))
}

/** Nothing of it has been measured: it stands there as the handbook has it. */
const isByHandbook = ({ evidence = {} }: Apparatus): boolean => !Object.values(evidence).some((one) => one?.mark === 'measured')

/** The first unit of the plan that a need is about, to lead there. */
export const unitToEnter = (district: Pick<District, 'apparatus'>, plan: Plan): Apparatus | undefined => unitsOf(district, plan).find(isByHandbook)

/** What of it is still to be done. The lift is as good as the survey or the plan measured it. */
export function openNeeds(district: District, plan: Plan): OwnNeed[] {
  const units = unitsOf(district, plan)
  const isDone: Readonly<Record<OwnNeed, boolean>> = {
    water: isAllWaterNamed(district, plan),
    lift: plan.fillSites.every((site) => {
      const bank = district.draftSites.find(({ id }) => id === site.draftSiteId)
      return site.lift_ft !== undefined ? markOf(site.evidence, 'lift_ft') === 'measured' : bank?.lift_ft !== undefined && markOf(bank.evidence, 'lift_ft') === 'measured'
    }),
    vehicles: !units.some(isByHandbook),
    stations: units.every(({ stationId }) => stationId !== undefined),
    dump: plan.dumpSites.every(({ pumperId, nurseId, portableTankIds = [] }) => pumperId !== undefined && (nurseId !== undefined || portableTankIds.length > 0)),
    roads: district.roads !== undefined,
  }
  return ownNeeds.filter((need) => !isDone[need])
}
