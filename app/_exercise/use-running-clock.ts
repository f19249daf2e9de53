'use client'

import { useEffect, useState } from 'react'
import type { ExerciseClock } from '@/lib/plan'
import { stationNow } from '../_live/station-time'
import { clockAt } from './exercise-clock'

/** Often enough to look live, seldom enough to leave time for all else; seldom indeed where motion is not wanted. */
const TICK_MS = 200
const STILL_TICK_MS = 2000

/** Where the clock stands by the station's time, kept up while it runs. */
export function useRunningClock(clock: ExerciseClock | undefined): number {
  const [now_ms, setNow] = useState(() => stationNow())
  const isRunning = clock?.isRunning ?? false
  useEffect(() => {
    if (!isRunning) return
    const isStill = window.matchMedia('(prefers-reduced-motion: reduce)').matches
    const timer = setInterval(() => { setNow(stationNow()) }, isStill ? STILL_TICK_MS : TICK_MS)
    return () => { clearInterval(timer) }
  }, [isRunning])
  // A clock that was set after the last tick stands where it was set.
  return clockAt(clock, Math.max(now_ms, clock ? Date.parse(clock.setAt) : 0))
}
