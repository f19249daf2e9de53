import { formatFrom } from './format-figure'
import { formatTime, shownTime_s } from './format-time'
import { say } from './say'

/** Seconds from dispatch, and the time it takes to set up once that can begin. */
export type ThereAndReady = { readonly arrive_s?: number; readonly ready_s?: number; readonly setUp_s?: number; readonly isArrivalAssumed?: boolean }

/** Shorter waits are lost among whole minutes. */
const NOTED_WAIT_S = 60

/**
 * When a unit is at its place, and when it is ready there with why that is later: "there 6 min, ready 18 min (5 min to set
 * up, 7 min waiting for people)". The wait is what the minutes shown leave, so that they add up.
 *
 * @param waitsFor what keeps it from setting up on arrival: people at a fill site, the tank at a dump site, the lay itself
 */
export function thereAndReady({ arrive_s, ready_s, setUp_s, isArrivalAssumed = false }: ThereAndReady, waitsFor: 'people' | 'tank' | 'lay'): string {
  const there = arrive_s === undefined ? 'none' : isArrivalAssumed ? say('result.assumed', { what: formatFrom(arrive_s) }) : formatFrom(arrive_s)
  if (ready_s === undefined) return arrive_s === undefined ? say('quantity.unknown') : say('result.there', { there })
  const ready = formatFrom(ready_s)
  if (setUp_s === undefined) return say('result.there-ready', { there, ready, why: waitsFor === 'lay' ? 'lay' : 'none', setUp: '', wait: '' })
  const isWaiting = arrive_s !== undefined && ready_s - arrive_s - setUp_s >= NOTED_WAIT_S
  const wait_s = isWaiting ? shownTime_s(ready_s, 'up') - shownTime_s(arrive_s, 'up') - setUp_s : 0
  return say('result.there-ready', { there, ready, why: wait_s > 0 ? waitsFor : 'setUp', setUp: formatTime(setUp_s), wait: formatTime(wait_s) })
}
