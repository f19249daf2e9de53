import { issue, type Issue } from '../issue'
import type { ProfileHeight } from './profile'

export type WholeProfile = {
  /** As given, with a height at every point; empty when no height at all is known. */
  readonly points: readonly { readonly distance_ft: number; readonly height_ft: number }[]
  readonly issues: readonly Issue[]
}

/**
 * A profile with its gaps bridged by straight lines, level beyond its first and last known height.
 *
 * @returns issues `terrain-gaps` (warn) with the length that is a guess, `terrain-none` (block) with no height at all
 */
export function fillGaps(profile: readonly ProfileHeight[]): WholeProfile {
  const known = profile.flatMap(({ distance_ft, height_ft }) => (height_ft === undefined ? [] : [{ distance_ft, height_ft }]))
  const first = known[0]
  if (!first) return { points: [], issues: [issue('terrain-none', 'block')] }
  let after = 0
  const points = profile.map(({ distance_ft }) => {
    while (after < known.length && (known[after]?.distance_ft ?? 0) < distance_ft) after++
    const high = known[after], low = known[after - 1] ?? first
    if (!high) return { distance_ft, height_ft: low.height_ft }
    const span_ft = high.distance_ft - low.distance_ft
    const share = span_ft > 0 ? (distance_ft - low.distance_ft) / span_ft : 1
    return { distance_ft, height_ft: after === 0 ? high.height_ft : low.height_ft + share * (high.height_ft - low.height_ft) }
  })
  const guessed_ft = profile.reduce((sum, point, i) => {
    const before = profile[i - 1]
    const isGap = point.height_ft === undefined || before?.height_ft === undefined
    return before && isGap ? sum + point.distance_ft - before.distance_ft : sum
  }, 0)
  return { points, issues: guessed_ft > 0 ? [issue('terrain-gaps', 'warn', [], { guessed_ft })] : [] }
}
