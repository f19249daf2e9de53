import type { Point } from '@/lib/geo'
import { findSteepest, gradesAlong, profileAlong, rowStep_deg, stepM, type Grade, type HeightGrid } from '@/lib/terrain'
import { feetFromMetres } from '@/lib/units'

/** The steepest stretches of a way in the direction it is driven. */
export type WayGrades = { readonly up?: Grade; readonly down?: Grade }

/** A grade counts over three samples of the data, and never over less than a long vehicle feels. */
const SAMPLES_A_STRETCH = 3
const SHORTEST_STRETCH_FT = 300

/**
 * The steepest stretch up and down along a way, by the elevation data.
 *
 * @param path two or more corners, in the direction of travel
 * @returns empty where the data has no heights along it, or the way is shorter than a stretch
 */
export function wayGrades(grid: HeightGrid, path: readonly Point[]): WayGrades {
  const step_ft = feetFromMetres(stepM(rowStep_deg(grid)))
  const over_ft = Math.max(SHORTEST_STRETCH_FT, SAMPLES_A_STRETCH * step_ft)
  return findSteepest(gradesAlong(profileAlong(grid, path, over_ft / 6), over_ft))
}
