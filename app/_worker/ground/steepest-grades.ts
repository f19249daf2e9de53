import { METRES_PER_DEGREE, type Point } from '@/lib/geo'
import { findSteepest, gradesAlong, profileAlong, rowStep_deg, type Grade, type HeightGrid } from '@/lib/terrain'
import { feetFromMetres } from '@/lib/units'

/** The steepest stretch up and down a way, over how long a stretch they were taken. */
export type SteepestGrades = { readonly over_ft: number; readonly up?: Grade; readonly down?: Grade }

/** Three samples of the data say what a road does; shorter stretches say nothing of grade. */
const SAMPLES = 3
const LEAST_OVER_FT = 300
const STEP_FT = 50

/** Steepest grades of a way by the elevation under it; a cutting, an embankment or a bridge is not in it. */
export function steepestOf(grid: HeightGrid, path: readonly Point[]): SteepestGrades {
  const over_ft = Math.max(LEAST_OVER_FT, SAMPLES * feetFromMetres(rowStep_deg(grid) * METRES_PER_DEGREE))
  return { over_ft, ...findSteepest(gradesAlong(profileAlong(grid, path, STEP_FT), over_ft)) }
}
