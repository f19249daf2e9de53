import type { DumpSpec } from './spec'

/**
 * Volume left in the tanks at which the pumper loses its draft.
 *
 *   linear between the points given, level outside them, 0 without any
 *
 * @param flow_gpm flow drawn, 0 or more
 * @returns volume, [gal]
 */
export function draftLimitAt(dump: Pick<DumpSpec, 'draftLimit'>, flow_gpm: number): number {
  const points = dump.draftLimit
  const last = points[points.length - 1]
  if (!last) return 0
  for (let i = 0; i < points.length; i++) {
    const right = points[i]!
    if (flow_gpm > right.flow_gpm) continue
    const left = points[i - 1]
    if (!left) return right.volume_gal
    const along = (flow_gpm - left.flow_gpm) / (right.flow_gpm - left.flow_gpm)
    return left.volume_gal + along * (right.volume_gal - left.volume_gal)
  }
  return last.volume_gal
}
