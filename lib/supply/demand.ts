import { neededFlow, type Building, type NeededFlow } from '../demand'
import { issue, type Issue } from '../issue'
import { findHazard, type Bundle, type Hazard, type Plan } from '../plan'

/** What the fire ground asks for: the stages, their peak, and how the hazard's figure came about. */
export type ResolvedDemand = {
  readonly stages: readonly { readonly from_s: number; readonly flow_gpm: number }[]
  /** Absent when neither the plan nor the hazard says. */
  readonly needed_gpm?: number
  readonly issues: readonly Issue[]
}

/**
 * The hazard's needed flow by every method side by side.
 *
 * @returns undefined while a dimension or class is missing
 */
export function findNeededFlow(hazard: Hazard): NeededFlow | undefined {
  const building = findBuilding(hazard)
  if (!building) return undefined
  const by = hazard.neededBy
  return neededFlow(building, by && by !== 'officer' ? { method: by } : {})
}

/** The building a hazard describes, when all that the methods need is there. */
function findBuilding(hazard: Hazard): Building | undefined {
  const { length_ft, width_ft, storeyHeight_ft, storeyCount = 1, occupancyClass, constructionType } = hazard
  if (!length_ft || !width_ft || !storeyHeight_ft || !occupancyClass || !constructionType) return undefined
  return {
    length_ft, width_ft,
    storeyHeights_ft: Array<number>(storeyCount).fill(storeyHeight_ft),
    ridge_ft: hazard.ridgeHeight_ft ?? 0,
    occupancyClass: occupancyClass as Building['occupancyClass'],
    construction: constructionType,
    isDwelling: hazard.isDwelling ?? false,
    exposureCount: hazard.exposureCount ?? 0,
    ...(hazard.spacing_ft !== undefined && { spacing_ft: hazard.spacing_ft }),
    ...(hazard.isSprinklered !== undefined && { isSprinklered: hazard.isSprinklered }),
    ...(hazard.involvedShare ? { involvedShare: hazard.involvedShare } : {}),
  }
}

/** The flow a hazard is held to: the officer's figure unless a method was chosen, else the method's. */
export function findHazardFlow_gpm(hazard: Hazard | undefined): number | undefined {
  if (!hazard) return undefined
  const entered = hazard.needed_gpm
  if (entered !== undefined && (hazard.neededBy === undefined || hazard.neededBy === 'officer')) return entered
  return findNeededFlow(hazard)?.flow_gpm ?? entered
}

/**
 * The flow a plan is held to: the peak of its own stages, else the hazard's. [gpm]
 *
 * @param hazard the plan's target hazard, where it has one
 * @returns undefined when neither says
 */
export function findPlanFlow_gpm({ demand = [] }: Pick<Plan, 'demand'>, hazard: Hazard | undefined): number | undefined {
  return demand.length > 0 ? Math.max(...demand.map(({ flow_gpm }) => flow_gpm)) : findHazardFlow_gpm(hazard)
}

/** The plan's own stages, else the hazard's flow from dispatch on: the engine at the scene starts it. */
export function resolveDemand(bundle: Bundle): ResolvedDemand {
  const { plan } = bundle
  const hazard = findHazard(bundle, plan.hazardId)
  const issues = hazard ? (findNeededFlow(hazard)?.issues ?? []).map((problem): Issue => ({ ...problem, severity: 'note', subjectIds: [hazard.id] })) : []
  const needed_gpm = findPlanFlow_gpm(plan, hazard)
  if (needed_gpm === undefined) return { stages: [], issues: [...issues, issue('demand-missing', 'warn', [plan.id])] }
  const stages = (plan.demand ?? []).map(({ from_s, flow_gpm }) => ({ from_s, flow_gpm })).sort((a, b) => a.from_s - b.from_s)
  return { stages: stages.length > 0 ? stages : [{ from_s: 0, flow_gpm: needed_gpm }], needed_gpm, issues }
}
