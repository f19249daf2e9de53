import { alongM, pointAlong, type Point } from '../../geo'

/** Over so much of a way its direction is taken: long enough that a kerb does not count. */
const REACH_M = 40

/** Compass heading from one place to another, 0 to 360. */
export function headingFrom(from: Point, to: Point): number {
  const north = to.lat - from.lat
  const east = (to.lon - from.lon) * Math.cos((from.lat * Math.PI) / 180)
  return ((Math.atan2(east, north) * 180) / Math.PI + 360) % 360
}

/** Compass heading of the end or the start of a way; undefined for one of no length. */
export function headingOfWay(path: readonly Point[], at: 'start' | 'end'): number | undefined {
  const along_m = alongM(path)
  const whole_m = along_m.at(-1) ?? 0
  const [first, last] = [path[0], path.at(-1)]
  if (!first || !last || whole_m < 1) return undefined
  const share = Math.min(1, REACH_M / whole_m)
  return at === 'start' ? headingFrom(first, pointAlong(path, share, along_m)) : headingFrom(pointAlong(path, 1 - share, along_m), last)
}
