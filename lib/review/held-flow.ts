import { SECONDS_PER_MINUTE } from '../units'
import { broughtBy_gal, type Load } from './loads'

/** A flow held for less says nothing about one that is to last. Assumed. */
const LEAST_HELD_S = 1800

/**
 * The greatest constant flow that the water of a log would have held, from the first load in the tank to the end: never
 * more than had come by then, and no more than came on average.
 *
 *   Q = min over t of brought(t) / (t − start),  and ≤ (brought(end) − brought(start)) / (end − start)
 *
 * @returns undefined where the log lasts less than half an hour after its first load
 */
export function heldFlow_gpm(loads: readonly Load[], end_s: number): number | undefined {
  const done_s = loads.flatMap(({ isDone, upTo_s }) => (isDone ? [upTo_s] : []))
  if (done_s.length === 0) return undefined
  const start_s = Math.min(...done_s)
  if (end_s - start_s < LEAST_HELD_S) return undefined
  const looks_s = [...loads.flatMap(({ from_s, upTo_s }) => [from_s, upTo_s]), end_s].filter((at_s) => at_s > start_s && at_s <= end_s)
  const least = looks_s.reduce((most, at_s) => Math.min(most, broughtBy_gal(loads, at_s) / (at_s - start_s)), Infinity)
  const average = (broughtBy_gal(loads, end_s) - broughtBy_gal(loads, start_s)) / (end_s - start_s)
  return Math.min(least, average) * SECONDS_PER_MINUTE
}
