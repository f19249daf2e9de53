import { SECONDS_PER_MINUTE } from '../units'
import { broughtBy_gal, type Load } from './loads'

/** Water that comes into a tank no faster than so many times what is asked for may have been held back by a full tank. Assumed. */
const HELD_BACK_FACTOR = 1.5
/** A tank reckoned so full may have been full. Assumed. */
const FULL_SHARE = 0.85
const STEP_S = 10

/**
 * Whether a full tank may have slowed a load: water came in no faster than 1.5 times what was asked for, or the tank, reckoned from what came and what
 * was asked for, was nearly full while it ran.
 *
 *   level = max(0, level + brought − asked for), from the first load that was done
 *
 * @param here       all loads at its site
 * @param asked_gpm  asked of that site; 0 where nobody says
 * @param capacity_gal of its tanks; absent: not known
 */
export function maybeHeldBack({ from_s, upTo_s }: Load, here: readonly Load[], asked_gpm: number, capacity_gal: number | undefined): boolean {
  const into_gpm = ((broughtBy_gal(here, upTo_s) - broughtBy_gal(here, from_s)) * SECONDS_PER_MINUTE) / (upTo_s - from_s)
  if (into_gpm <= asked_gpm * HELD_BACK_FACTOR) return true
  if (capacity_gal === undefined) return false
  const ready_s = Math.min(...here.map((load) => load.upTo_s))
  let level_gal = 0
  let brought_gal = 0
  for (let at_s = 0; at_s <= upTo_s; at_s += STEP_S) {
    const now_gal = broughtBy_gal(here, at_s)
    const drawn_gal = at_s > ready_s ? (asked_gpm * STEP_S) / SECONDS_PER_MINUTE : 0
    level_gal = Math.min(capacity_gal, Math.max(0, level_gal + now_gal - brought_gal - drawn_gal))
    brought_gal = now_gal
    if (at_s >= from_s && level_gal >= capacity_gal * FULL_SHARE) return true
  }
  return false
}
