import type { SupplyResult } from './result'

/** What somebody has to say before a time of the answer can be known. */
export type MissingForTime = 'firstDue' | 'firstDueTank' | 'firstDueWay' | 'need'

/** Times of the answer that need more than the plan's sites and tenders. */
export type NeedyTime = 'firstArrival_s' | 'firstWater_s' | 'tankEmpty_s' | 'gap_s' | 'short_s'

const needs: Readonly<Record<NeedyTime, { readonly engine: boolean; readonly tank: boolean; readonly flow: boolean }>> = {
  firstArrival_s: { engine: true, tank: false, flow: false },
  firstWater_s: { engine: false, tank: false, flow: true },
  tankEmpty_s: { engine: true, tank: true, flow: true },
  gap_s: { engine: true, tank: true, flow: true },
  short_s: { engine: false, tank: false, flow: true },
}

/**
 * Why a time of the answer is not known, as against one that never comes: what is still to be said.
 *
 * @returns empty: all is said, and a time of `null` never comes
 */
export function missingForTime(figure: NeedyTime, { needed_gpm, firstArrival_s, issues }: Pick<SupplyResult, 'needed_gpm' | 'firstArrival_s' | 'issues'>): MissingForTime[] {
  const { engine, tank, flow } = needs[figure]
  const has = (code: string) => issues.some((one) => one.code === code)
  const missing: MissingForTime[] = []
  if (engine && has('first-due-missing')) missing.push('firstDue')
  else if (engine && firstArrival_s === null) missing.push('firstDueWay')
  if (tank && has('first-due-tank-missing')) missing.push('firstDueTank')
  if (flow && needed_gpm === null) missing.push('need')
  return missing
}
