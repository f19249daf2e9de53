import { compileShuttle, recordShuttle, type PhaseName, type RunDemand } from '../shuttle'
import type { CompiledPlan } from './compile-plan'

/** What the string chart draws: every tender a line between the sites it works, the tanks' level underneath, the flow. */
export type SupplyChart = {
  readonly end_s: number
  readonly tenders: readonly {
    readonly id: string
    readonly fillSiteId: string
    readonly dumpSiteId: string
    /** Length of its road between the sites, one way, full. */
    readonly distance_mi: number
    readonly segments: readonly { readonly phase: PhaseName; readonly from_s: number; readonly to_s: number; readonly siteId: string }[]
  }[]
  /** Tanks of each dump site; those that tenders dump into in front of the ones drafted from come first. */
  readonly tanks: readonly { readonly id: string; readonly isFront?: true; readonly capacity_gal: number; readonly levels: readonly { readonly time_s: number; readonly level_gal: number }[] }[]
  readonly flow: readonly { readonly from_s: number; readonly flow_gpm: number }[]
  readonly supplyReady_s?: number
}

/**
 * Records a run for drawing.
 *
 * @param demand the planned demand, or a constant flow such as the sustainable one
 * @returns undefined when something blocks the answer
 */
export function supplyChart(compiled: CompiledPlan, demand: RunDemand = 'planned'): SupplyChart | undefined {
  if (!compiled.spec) return undefined
  const { run, segments, levels, frontLevels, flow } = recordShuttle(compileShuttle(compiled.spec), { demand })
  return {
    end_s: run.end_s,
    tenders: compiled.tenders.map(({ tender, fillSiteId, dumpSiteId }, index) => {
      const way = compiled.ways.find(tender.id, fillSiteId, dumpSiteId)
      return { id: tender.id, fillSiteId, dumpSiteId, distance_mi: way && 'distance_mi' in way ? way.distance_mi : 0, segments: segments[index] ?? [] }
    }),
    tanks: compiled.dumps.flatMap(({ site, spec }, index) => [
      ...(spec.front ? [{ id: site.id, isFront: true as const, capacity_gal: spec.front.capacity_gal, levels: frontLevels[index] ?? [] }] : []),
      { id: site.id, capacity_gal: spec.capacity_gal, levels: levels[index] ?? [] },
    ]),
    flow,
    ...(run.supplyReady_s !== undefined && { supplyReady_s: run.supplyReady_s }),
  }
}
