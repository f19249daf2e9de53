import type { Bundle } from './documents/bundle'
import type { Apparatus, DraftingPump, Tender } from './documents/apparatus'
import type { District, DraftSite, Hazard, Source, Station } from './documents/district'
import type { Lay } from './documents/lay'
import type { FillSite } from './documents/plan-sites'

type Docs = Pick<Bundle, 'district' | 'plan'>

const byId = <T extends { id: string }>(list: readonly T[], id: string | undefined): T | undefined =>
  id === undefined ? undefined : list.find((item) => item.id === id)

export const findApparatus = ({ district }: { district: District }, id: string | undefined): Apparatus | undefined => byId(district.apparatus, id)

/** A pumper or portable pump by its id; undefined for a tender, and where nothing has that id. */
export function findDraftingPump(docs: { district: District }, id: string | undefined): DraftingPump | undefined {
  const found = findApparatus(docs, id)
  return found && found.kind !== 'tender' ? found : undefined
}

export function findTender(docs: { district: District }, id: string | undefined): Tender | undefined {
  const found = findApparatus(docs, id)
  return found?.kind === 'tender' ? found : undefined
}

export const findStation = ({ district }: { district: District }, id: string | undefined): Station | undefined => byId(district.stations, id)
export const findSource = ({ district }: { district: District }, id: string | undefined): Source | undefined => byId(district.sources, id)
export const findDraftSite = ({ district }: { district: District }, id: string | undefined): DraftSite | undefined => byId(district.draftSites, id)
export const findHazard = ({ district }: { district: District }, id: string | undefined): Hazard | undefined => byId(district.hazards, id)
export const findFillSite = ({ plan }: Docs, id: string | undefined): FillSite | undefined => byId(plan.fillSites, id)

/** Whether what a hose lay carries is part of the plan's flow. */
export const isCounted = ({ isLeftOut }: Pick<Lay, 'isLeftOut'>): boolean => !isLeftOut

/** Every item of a bundle that has a name, by id; the fire ground and the plan under their own. */
export function namesOf({ district, plan }: Docs): Map<string, string> {
  const names = new Map<string, string>([[plan.id, plan.name], [district.id, district.name]])
  for (const doc of [district, plan])
    for (const list of Object.values(doc))
      if (Array.isArray(list))
        for (const item of list as { id?: string; name?: string }[]) if (item.id && item.name) names.set(item.id, item.name)
  return names
}
