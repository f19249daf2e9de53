import { requirePositive } from '../issue'
import type { ProfilePoint } from './profile'

/** A stretch of a way and its slope: rise over level distance, negative downhill. */
export type Grade = { readonly from_ft: number; readonly to_ft: number; readonly gradeShare: number; readonly doubtShare: number }

/**
 * Mean grade of each stretch of a way at least so long.
 *
 *   grade = (h₂ − h₁) / distance      doubt = √(d₁² + d₂²) / distance, too much where both heights are off the same way
 *
 * Elevation data tells the slope of a stretch, not of a bump: a stretch shorter than a few samples says nothing.
 *
 * @param profile from profileAlong
 * @param over_ft length of a stretch, above 0; three samples of the data or more
 * @returns one for each place where a stretch with heights at both ends begins
 * @throws RangeError if the length is not positive
 */
export function gradesAlong(profile: readonly ProfilePoint[], over_ft: number): Grade[] {
  requirePositive('over_ft', over_ft)
  const grades: Grade[] = []
  let end = 0
  for (const from of profile) {
    while (end < profile.length && (profile[end]?.distance_ft ?? 0) - from.distance_ft < over_ft) end++
    const to = profile[end]
    if (!to) break
    if (from.height_ft === undefined || to.height_ft === undefined) continue
    const run_ft = to.distance_ft - from.distance_ft
    grades.push({
      from_ft: from.distance_ft, to_ft: to.distance_ft,
      gradeShare: (to.height_ft - from.height_ft) / run_ft,
      doubtShare: Math.hypot(from.doubt_ft ?? 0, to.doubt_ft ?? 0) / run_ft,
    })
  }
  return grades
}

/** The steepest stretch up, and the steepest down; undefined where no stretch is long enough or none goes that way. */
export function findSteepest(grades: readonly Grade[]): { readonly up?: Grade; readonly down?: Grade } {
  let up: Grade | undefined, down: Grade | undefined
  for (const grade of grades) {
    if (grade.gradeShare > (up?.gradeShare ?? 0)) up = grade
    if (grade.gradeShare < (down?.gradeShare ?? 0)) down = grade
  }
  return { up, down }
}
