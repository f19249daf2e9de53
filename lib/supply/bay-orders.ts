import { compileShuttle, sustainableFlow, type ShuttleSpec } from '../shuttle'
import type { FillSiteResult } from './result'

/**
 * Both ways to work several bays on one pump, each with everything else as it is: sharing its water, or one filling
 * while the next stands hooked up.
 *
 * @param sustainable_gpm of the plan as it is, limited by its pumpers; so that only the other way is searched
 * @returns by fill site id, for sites with more than one bay
 */
export function bayOrdersOf(spec: ShuttleSpec, sustainable_gpm: number, pump_gpm: number): ReadonlyMap<string, FillSiteResult['bayOrders']> {
  return new Map(spec.fills.flatMap((fill, index) => {
    if (fill.bayCount < 2) return []
    const isTogether = fill.flowingBayCount === undefined
    const other = { ...fill, flowingBayCount: isTogether ? 1 : undefined }
    const other_gpm = Math.min(sustainableFlow(compileShuttle({ ...spec, fills: spec.fills.with(index, other) })).flow_gpm, pump_gpm)
    return [[fill.id, isTogether ? { together_gpm: sustainable_gpm, oneAtATime_gpm: other_gpm } : { together_gpm: other_gpm, oneAtATime_gpm: sustainable_gpm }] as const]
  }))
}
