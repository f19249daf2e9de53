import type { Issue } from '../../issue'
import type { Bundle, Plan } from '../../plan'
import { COMMAND_CREW_COUNT, crewNeeded, defaults, evaluatePlan, lastingFlow_gpm, resolvePlanLays, type SupplyResult } from '../../supply'
import type { ResolveWays } from '../ways-with-closure'

/** Hose all the way, tenders all the way, hose to a road and tenders from there, or both beside each other. */
export const carriages = ['relay', 'shuttle', 'handOver', 'both'] as const
export type Carriage = (typeof carriages)[number]

/** One way to bring the water, and what it takes. */
export type CarriageTrial = {
  readonly carriage: Carriage
  readonly fromId: string
  /** Second source, where both carry beside each other and from different water. */
  readonly otherFromId?: string
  /** The hose lies in a straight line over open ground. */
  readonly isAcross?: boolean
  /** How much of the way is hose, where tenders go on from there. */
  readonly hoseShare?: number
  /** Held in the end. */
  readonly flow_gpm: number
  /** When that flow stands, after dispatch. */
  readonly ready_s: number
  /** Held before, where supply is ready before the hose stands. */
  readonly before?: { readonly flow_gpm: number; readonly ready_s: number }
  readonly pumperIds: readonly string[]
  readonly tenderIds: readonly string[]
  readonly crewCount: number
  readonly hose_ft: number
  readonly issues: readonly Issue[]
}

/** What a plan brings; undefined where something blocks its answer or no water comes. */
export function tryPlan(base: Bundle, plan: Plan, told: Pick<CarriageTrial, 'carriage' | 'fromId' | 'otherFromId' | 'hoseShare' | 'isAcross'>, resolve: ResolveWays): CarriageTrial | undefined {
  const bundle = resolve({ ...base, plan })
  const [lay] = plan.hoseLays ?? []
  const uses = { tenderIds: plan.tenders.map(({ tenderId }) => tenderId as string), hose_ft: (lay?.stretches ?? []).reduce((sum, { length_ft = 0, lineCount = 1 }) => sum + length_ft * lineCount, 0) }
  if (plan.tenders.length === 0) {
    const { lays: [found], issues } = resolvePlanLays(bundle)
    if (!found || !lay) return undefined
    const pumperIds = found.pumperIds
    return { ...told, ...uses, pumperIds, crewCount: crewOf(plan, pumperIds.length), flow_gpm: lastingFlow_gpm(found.water, found.flow_gpm, plan.duration_s ?? defaults.duration_s.value), ready_s: found.ready_s, issues }
  }
  const result = evaluatePlan(bundle, { quick: true })
  const flow = flowOf(result)
  const layPumpers = result.lays?.[0]?.pumperIds
  // A lay that did not count is another plan than the one to be tried.
  if (!flow || (lay && !layPumpers)) return undefined
  const pumperIds = [...new Set([...plan.fillSites, ...plan.dumpSites].flatMap(({ pumperId }) => (pumperId === undefined ? [] : [pumperId as string])).concat(layPumpers ?? []))]
  return { ...told, ...uses, ...flow, pumperIds, crewCount: crewOf(plan, pumperIds.length), issues: result.issues }
}

function flowOf({ sustainable_gpm, supplyReady_s, laterFlows }: SupplyResult): Pick<CarriageTrial, 'flow_gpm' | 'ready_s' | 'before'> | undefined {
  if (sustainable_gpm === null || supplyReady_s === null) return undefined
  const last = laterFlows?.at(-1)
  if (!last) return sustainable_gpm > 0 ? { flow_gpm: sustainable_gpm, ready_s: supplyReady_s } : undefined
  return { flow_gpm: last.flow_gpm, ready_s: last.from_s, ...(sustainable_gpm > 0 && { before: { flow_gpm: sustainable_gpm, ready_s: supplyReady_s } }) }
}

/** Operators, drivers, those who lay hose, those at bays and positions, and with tenders a supply officer and two for traffic. Assumed. */
function crewOf({ fillSites, dumpSites, hoseLays = [], tenders }: Plan, pumperCount: number): number {
  const places = [...fillSites.map(({ bayCount = 1 }) => bayCount), ...dumpSites.map(({ positionCount = 1 }) => positionCount)]
  const atPlaces = places.reduce((sum, count) => sum + crewNeeded(count), 0)
  return pumperCount + tenders.length + hoseLays.reduce((sum, { crewCount = defaults.layCrewCount.value }) => sum + crewCount, 0) + atPlaces + (tenders.length > 0 ? COMMAND_CREW_COUNT : 1)
}
