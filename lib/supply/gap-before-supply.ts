import type { ShuttleRun, ShuttleSpec } from '../shuttle'

/**
 * From the first engine's tank empty to supply ready in the planned run, [s]; 0 where the tank lasts until then.
 *
 * @returns undefined where there is nothing to tell it by: no first engine with a tank, no flow asked for, or supply never ready
 */
export function gapBeforeSupply_s({ demand: { firstDue, stages } }: ShuttleSpec, { gap_s, supplyReady_s }: Pick<ShuttleRun, 'gap_s' | 'supplyReady_s'>): number | undefined {
  if (gap_s !== undefined) return gap_s
  return firstDue && stages.length > 0 && supplyReady_s !== undefined ? 0 : undefined
}
