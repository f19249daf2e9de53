import { issue, requireThat, type Issue } from '../issue'
import { SECONDS_PER_MINUTE } from '../units'
import type { Building } from './building'
import { buildingVolume_cuft, floorArea_sqft } from './building-size'
import { IITRI_OTHER_MOST_SQFT, QUICK_RULE_MOST_GPM, QUICK_RULE_MOST_SHARE, academyFlow_gpm, instituteFlow_gpm, iowaFlow_gpm } from './quick-rules'
import { dwellingRatingFlow_gpm, ratingDuration_s, ratingFlow_gpm, type Contents, type DwellingTable } from './rating-flow'
import { ruralDelivery_gpm, ruralSupply_gal, type DwellingRule } from './rural-supply'

export type DemandMethod = 'rural-standard' | 'academy' | 'iowa' | 'institute' | 'rating-schedule'

/** One method's answer. */
export type MethodFlow = {
  readonly method: DemandMethod
  readonly flow_gpm: number
  /** Where the method speaks of volume or time. */
  readonly supply_gal?: number
  readonly duration_s?: number
  /** Inside what the method was made for. */
  readonly isValid: boolean
  readonly issues: readonly Issue[]
}

export type NeededFlow = {
  readonly methods: readonly MethodFlow[]
  readonly chosen: DemandMethod
  readonly flow_gpm: number
  /** The standard's least supply, or the chosen flow for the duration, whichever is more. */
  readonly supply_gal: number
  readonly duration_s: number
  readonly issues: readonly Issue[]
}

export type NeededFlowOptions = {
  /** A method a person picked; default by the rule below. */
  readonly method?: DemandMethod
  /** Default 2 h. */
  readonly duration_s?: number
  readonly dwellingRule?: DwellingRule
  readonly dwellingTable?: DwellingTable
  readonly contents?: Contents
  /** X + P of the rating schedule. */
  readonly exposureShare?: number
}

/** Duration of the least creditable supply, and of the horizon: 2 h. Rating bureau page (seen). */
export const DEFAULT_DURATION_S = 7_200

/**
 * Flow that a building needs, by every method side by side, and the one chosen.
 *
 * Rule of choice: the rural standard's delivery rate is the floor, because it is the one written for places without
 * hydrants. Where the academy's rule asks for more and is inside its range, its figure is chosen instead. The others are
 * for comparison: they differ by a factor of three for large plans and are never averaged. A person may pick any.
 *
 * @param building dimensions, use and exposures
 * @param options  a picked method, duration, and which reading of conflicting tables
 * @returns all methods, the choice, supply and duration; issues `dwelling-factor-conflict`, `sprinklered-may-be-waived`,
 *   `methods-far-apart`, and by method `outside-method-range`, `dwelling-table-conflict`, `spacing-unknown`
 * @throws RangeError if a dimension is out of range
 * @source each method's file; the rule of choice is ours
 */
export function neededFlow(building: Building, options: NeededFlowOptions = {}): NeededFlow {
  const methods = [
    ruralMethod(building, options), academyMethod(building), iowaMethod(building), instituteMethod(building), ratingMethod(building, options),
  ]
  const chosen = options.method ?? choose(methods)
  const pick = methods.find(({ method }) => method === chosen)
  const rural = methods[0]
  requireThat(pick !== undefined && rural !== undefined, 'method', chosen, 'one of the methods')
  const duration_s = options.duration_s ?? DEFAULT_DURATION_S
  requireThat(duration_s > 0, 'duration_s', duration_s, 'above 0')
  const issues: Issue[] = []
  const flows = methods.map(({ flow_gpm }) => flow_gpm)
  const least_gpm = Math.min(...flows), most_gpm = Math.max(...flows)
  if (most_gpm > 3 * least_gpm) issues.push(issue('methods-far-apart', 'note', [], { least_gpm, most_gpm }))
  if (!pick.isValid) issues.push(issue('chosen-method-outside-range', 'warn', [], { method: chosen, flow_gpm: pick.flow_gpm }))
  return {
    methods, chosen, flow_gpm: pick.flow_gpm, duration_s,
    supply_gal: Math.max(rural.supply_gal ?? 0, (pick.flow_gpm * duration_s) / SECONDS_PER_MINUTE),
    issues,
  }
}

function choose(methods: readonly MethodFlow[]): DemandMethod {
  const find = (name: DemandMethod) => methods.find(({ method }) => method === name)
  const academy = find('academy'), rural = find('rural-standard')
  return academy?.isValid && academy.flow_gpm > (rural?.flow_gpm ?? 0) ? 'academy' : 'rural-standard'
}

function ruralMethod(building: Building, { dwellingRule = 'capped' }: NeededFlowOptions): MethodFlow {
  const { occupancyClass, construction, isDwelling, exposureCount, isSprinklered } = building
  const ask = { volume_cuft: buildingVolume_cuft(building), occupancyClass, construction, isDwelling, hasExposure: exposureCount > 0 }
  const issues: Issue[] = []
  const supply_gal = ruralSupply_gal({ ...ask, dwellingRule })
  const capped_gal = ruralSupply_gal({ ...ask, dwellingRule: 'capped' }), full_gal = ruralSupply_gal({ ...ask, dwellingRule: 'full' })
  if (capped_gal !== full_gal) {
    const capped_gpm = ruralDelivery_gpm(capped_gal), full_gpm = ruralDelivery_gpm(full_gal)
    issues.push(issue('dwelling-factor-conflict', 'warn', [], { capped_gal, full_gal, capped_gpm, full_gpm }))
  }
  if (isSprinklered) issues.push(issue('sprinklered-may-be-waived', 'note', [], { supply_gal }))
  return { method: 'rural-standard', flow_gpm: ruralDelivery_gpm(supply_gal), supply_gal, isValid: true, issues }
}

function academyMethod(building: Building): MethodFlow {
  const involvedShare = building.involvedShare ?? 1
  const flow_gpm = academyFlow_gpm(floorArea_sqft(building), building.storeyHeights_ft.length, involvedShare, building.exposureCount)
  const isValid = flow_gpm <= QUICK_RULE_MOST_GPM && involvedShare <= QUICK_RULE_MOST_SHARE
  return { method: 'academy', flow_gpm, isValid, issues: isValid ? [] : [outside({ flow_gpm, most_gpm: QUICK_RULE_MOST_GPM, involvedShare })] }
}

/** The largest single space: one floor to its ceiling, unless the building is a single storey, whose roof space counts. */
function iowaMethod(building: Building): MethodFlow {
  const { storeyHeights_ft, ridge_ft } = building
  const highest_ft = Math.max(...storeyHeights_ft) + (storeyHeights_ft.length === 1 ? ridge_ft / 2 : 0)
  return { method: 'iowa', flow_gpm: iowaFlow_gpm(floorArea_sqft(building) * highest_ft), isValid: true, issues: [] }
}

function instituteMethod(building: Building): MethodFlow {
  const area_sqft = floorArea_sqft(building)
  const isValid = building.isDwelling || area_sqft <= IITRI_OTHER_MOST_SQFT
  const flow_gpm = instituteFlow_gpm(area_sqft, building.isDwelling)
  return { method: 'institute', flow_gpm, isValid, issues: isValid ? [] : [outside({ area_sqft, most_sqft: IITRI_OTHER_MOST_SQFT })] }
}

function ratingMethod(building: Building, { dwellingTable = 'older', contents, exposureShare }: NeededFlowOptions): MethodFlow {
  const { isDwelling, spacing_ft, storeyHeights_ft, construction } = building
  const issues: Issue[] = []
  if (isDwelling && storeyHeights_ft.length <= 2) {
    if (spacing_ft === undefined) issues.push(issue('spacing-unknown', 'note'))
    const at = (table: DwellingTable) => (spacing_ft === undefined ? 1_500 : dwellingRatingFlow_gpm(spacing_ft, table))
    const older_gpm = at('older'), newer_gpm = at('newer')
    if (older_gpm !== newer_gpm) issues.push(issue('dwelling-table-conflict', 'note', [], { older_gpm, newer_gpm }))
    const flow_gpm = at(dwellingTable)
    return { method: 'rating-schedule', flow_gpm, duration_s: ratingDuration_s(flow_gpm), isValid: spacing_ft !== undefined, issues }
  }
  // Effective area: the largest floor and half of the others, as they are alike here.
  const area_sqft = floorArea_sqft(building) * (1 + (storeyHeights_ft.length - 1) / 2)
  const flow_gpm = ratingFlow_gpm(area_sqft, construction, contents, exposureShare)
  return { method: 'rating-schedule', flow_gpm, duration_s: ratingDuration_s(flow_gpm), isValid: true, issues }
}

const outside = (values: Record<string, number>): Issue => issue('outside-method-range', 'note', [], values)
