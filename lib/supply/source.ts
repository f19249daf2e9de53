import { hydrantAvailableFlow_gpm, pondLens_gal, streamFlow_gpm } from '../hydraulics'
import type { Source } from '../plan'

/** What a source holds above the strainer and what runs into it; absent: does not run out, or is not known. */
export type SourceWater = { readonly usable_gal?: number; readonly inflow_gpm?: number; readonly hydrant_gpm?: number }

/**
 * Water of a source: entered volume first, else surface × usable depth less the seasonal drop;
 * a stream by the float method; a pressure hydrant by its two-point flow test at 20 psi.
 */
export function sourceWater(source: Source | undefined): SourceWater {
  if (!source) return {}
  if (source.kind === 'pressureHydrant') {
    const { static_psi, residual_psi, test_gpm } = source
    return static_psi !== undefined && residual_psi !== undefined && test_gpm !== undefined && test_gpm > 0 && static_psi > residual_psi
      ? { hydrant_gpm: hydrantAvailableFlow_gpm({ static_psi, residual_psi, flow_gpm: test_gpm }) }
      : {}
  }
  const inflow_gpm = source.inflow_gpm ?? streamInflow_gpm(source)
  const usable_gal = source.usable_gal ?? lens_gal(source)
  return {
    ...(usable_gal !== undefined && { usable_gal }),
    ...(usable_gal === undefined && source.kind === 'stream' && inflow_gpm !== undefined && { usable_gal: 0 }),
    ...(inflow_gpm !== undefined && { inflow_gpm }),
  }
}

function streamInflow_gpm({ kind, streamWidth_ft, streamDepth_ft, floatReach_ft, float_s }: Source): number | undefined {
  if (kind !== 'stream' || !streamWidth_ft || !streamDepth_ft || !floatReach_ft || !float_s) return undefined
  return streamFlow_gpm(streamWidth_ft, streamDepth_ft, floatReach_ft / float_s)
}

function lens_gal({ surface_sqft, usableDepth_ft, seasonalDrop_ft = 0 }: Source): number | undefined {
  if (surface_sqft === undefined || usableDepth_ft === undefined) return undefined
  return pondLens_gal(surface_sqft, Math.max(0, usableDepth_ft - seasonalDrop_ft))
}
