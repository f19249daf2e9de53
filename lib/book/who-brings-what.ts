import { findApparatus, findStation, isCounted, type Bundle, type Equipment } from '../plan'
import { defaults, FIRE_GROUND, sitesOfTask, type SupplyResult } from '../supply'

export type PartTask = 'firstDue' | 'fillPumper' | 'dumpPumper' | 'nurse' | 'layPumper' | 'tender'

/** One vehicle's part in a plan: what it does where, when it is there, and what it brings. */
export type PlanPart = {
  readonly apparatusId: string
  readonly task: PartTask
  /** Where it works: a site, a hose lay or the fire ground; for a tender its fill site. */
  readonly placeId: string
  /** For a tender, where it dumps. */
  readonly dumpSiteId?: string
  readonly stationId?: string
  readonly isMutualAid: boolean
  /** From dispatch; absent where nothing says when. */
  readonly arrive_s?: number
  /** Nothing says where it comes from: the time is one that is assumed. */
  readonly isArrivalAssumed?: true
  /** A tender's round with nobody in the way. */
  readonly cycle_s?: number
  readonly usable_gal?: number
  /** Hose, tanks, suction, strainers and siphons that ride on it. */
  readonly brings: readonly Equipment[]
}

/** Who comes to a plan, in the order of arrival; who has no time stands last. */
export function whoBringsWhat(bundle: Bundle, result: SupplyResult): PlanPart[] {
  const { plan, district } = bundle
  const parts: PlanPart[] = []
  const add = (apparatusId: string | undefined, task: PartTask, placeId: string, more: Partial<PlanPart> = {}) => {
    const unit = findApparatus(bundle, apparatusId)
    if (!unit) return
    const station = findStation(bundle, unit.stationId)
    const assumed_s = assumedArrivalOf(result, unit.id)
    const arrive_s = more.arrive_s ?? arrivalOf(bundle, result, unit.id, placeId) ?? assumed_s
    parts.push({
      apparatusId: unit.id, task, placeId,
      ...(station && { stationId: station.id }),
      isMutualAid: unit.mutualAid ?? station?.mutualAid ?? false,
      ...more, ...(arrive_s !== undefined && { arrive_s, ...(assumed_s !== undefined && { isArrivalAssumed: true as const }) }),
      brings: district.equipment.filter(({ carriedBy }) => carriedBy === unit.id),
    })
  }
  const pumps = new Set([...plan.fillSites, ...plan.dumpSites].map(({ pumperId }) => pumperId as string | undefined))
  if (!pumps.has(plan.firstDueId)) add(plan.firstDueId, 'firstDue', FIRE_GROUND)
  for (const site of plan.fillSites) add(site.pumperId, 'fillPumper', site.id)
  for (const site of plan.dumpSites) {
    add(site.pumperId, 'dumpPumper', site.id)
    add(site.nurseId, 'nurse', site.id)
  }
  for (const lay of plan.hoseLays ?? []) if (isCounted(lay)) for (const id of lay.pumperIds) if (!pumps.has(id)) add(id, 'layPumper', lay.id)
  for (const task of plan.tenders) {
    const { fillSiteId = '', dumpSiteId } = sitesOfTask(bundle, task)
    const found = result.tenders.find(({ id }) => id === task.tenderId)
    add(task.tenderId, 'tender', fillSiteId, {
      ...(dumpSiteId !== undefined && { dumpSiteId }),
      ...(found && found.arrive_s !== null && { arrive_s: found.arrive_s }), ...(found && found.cycle_s !== null && { cycle_s: found.cycle_s }),
      ...(found && found.usable_gal !== null && { usable_gal: found.usable_gal }),
    })
  }
  return parts.sort((a, b) => (a.arrive_s ?? Infinity) - (b.arrive_s ?? Infinity))
}

/** When a vehicle with no station is taken to arrive, as the answer counts it. */
function assumedArrivalOf({ issues }: SupplyResult, apparatusId: string): number | undefined {
  const arrive_s = issues.find(({ code, subjectIds }) => code === 'unit-without-station' && subjectIds.includes(apparatusId))?.values['arrive_s']
  return typeof arrive_s === 'number' ? arrive_s : undefined
}

/** Turnout, then the way from the station, as the answer has it. */
function arrivalOf(bundle: Bundle, result: SupplyResult, apparatusId: string, placeId: string): number | undefined {
  const unit = findApparatus(bundle, apparatusId)
  const station = findStation(bundle, unit?.stationId)
  const leg = station && result.legs.find((one) => one.apparatusId === apparatusId && one.fromId === station.id && one.toId === placeId)
  return leg?.travel_s === undefined || leg.travel_s === null ? undefined : (unit?.turnout_s ?? station?.turnout_s ?? defaults.turnout_s.value) + leg.travel_s
}
