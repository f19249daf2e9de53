import { farmPond_gal, hydrantAvailableFlow_gpm, pondLens_gal, streamFlow_gpm } from '@/lib/hydraulics'
import { findElevationLift } from '@/lib/supply'
import type { DraftSite, Source } from '@/lib/plan'

/** Flow of a pressure hydrant at 20 psi by its two-point test; undefined while the test is not whole, or cannot be. */
export function findHydrantFlow_gpm({ static_psi, residual_psi, test_gpm }: Source): number | undefined {
  if (static_psi === undefined || residual_psi === undefined || !test_gpm || static_psi <= residual_psi) return undefined
  return hydrantAvailableFlow_gpm({ static_psi, residual_psi, flow_gpm: test_gpm })
}

/** Flow of a stream by its float run. */
export function findFloatFlow_gpm({ streamWidth_ft, streamDepth_ft, floatReach_ft, float_s }: Source): number | undefined {
  if (!streamWidth_ft || !streamDepth_ft || !floatReach_ft || !float_s) return undefined
  return streamFlow_gpm(streamWidth_ft, streamDepth_ft, floatReach_ft / float_s)
}

/** Water above the strainer, by the surface and the depth that can be drawn down. */
export function findLensVolume_gal({ surface_sqft, usableDepth_ft }: Source): number | undefined {
  return surface_sqft === undefined || usableDepth_ft === undefined ? undefined : pondLens_gal(surface_sqft, usableDepth_ft)
}

/** All the water of a farm pond, by its surface and greatest depth. */
export function findPondVolume_gal({ surface_sqft, deepest_ft }: Source): number | undefined {
  return surface_sqft === undefined || deepest_ft === undefined ? undefined : farmPond_gal(surface_sqft, deepest_ft)
}

/** Lift of a draft site by its bank and its source's water surface; undefined where it may be off by more than itself. */
export function findLiftByElevation_ft(site: DraftSite, source: Source | undefined): number | undefined {
  const found = findElevationLift(site, source)
  return found?.isPromise ? found.lift_ft : undefined
}
