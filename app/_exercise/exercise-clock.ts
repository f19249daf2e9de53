import type { ExerciseClock } from '@/lib/plan'

/** Longest time an exercise may reach. */
const LONGEST_S = 172_800

/**
 * Where a clock stands.
 *
 * @param now_ms the station's time, milliseconds since 1970
 */
export function clockAt(clock: ExerciseClock | undefined, now_ms: number): number {
  if (!clock) return 0
  if (!clock.isRunning) return clock.at_s
  const passed_s = Math.max(0, (now_ms - Date.parse(clock.setAt)) / 1000)
  return Math.min(LONGEST_S, clock.at_s + passed_s * clock.speedFactor)
}

/** The clock set anew: where it stands, whether it runs, and how fast. */
export const setClock = (at_s: number, isRunning: boolean, speedFactor: number, now_ms: number): ExerciseClock =>
  ({ at_s, isRunning, speedFactor, setAt: new Date(now_ms).toISOString() })
