import { findApparatus, findStation } from '../plan'
import { defaults } from '../supply'
import { waysNow } from './closures'
import type { Session } from './session'
import type { World } from './world'

/** Where a tender is along its way. */
export type Along = {
  /** How far it is along the way it drives, 0 to 1; absent where it does not drive. */
  readonly alongShare?: number
  /** Until it sets off from its station, as things are; absent where it has, or does not come from one. */
  readonly rolls_s?: number
  /** Is still on the planned way from its station, though others are sent round: it has passed the closed place, or drives back. */
  readonly isOnPlannedWay?: boolean
}

/** The way from a station as it is driven under a world: which one, and how long it takes. */
type WayIn = { readonly key: string; readonly travel_s: number }

/** Arrivals this close are the same: far below a second, far above rounding. */
const SAME_S = 1e-3

/**
 * Where a tender is that has yet to come: at its station until it rolls, then along the road. It arrives when the run says so, and
 * drives the time that its way takes before that. Who is made late on the road stands where it is until only the rest of its way is
 * left. Who is turned round by a closed road drives back first; who has passed the place goes on.
 *
 * @param arrive_s when it gets there, as things are at the session's clock
 * @returns nothing where it has no station, or no way
 */
export function comingFrom({ now, past, clock_s }: Session, tenderId: string, arrive_s: number): Along {
  const worlds = [...past.map(({ stretch }) => stretch), now]
  const steps = worlds.flatMap(({ world }, k) => {
    const isLast = k === worlds.length - 1
    const coming_s = isLast ? arrive_s : world.spec.tenders.find(({ id }) => id === tenderId)?.arrive_s
    return coming_s === undefined ? [] : [{ way: findWayIn(world, tenderId), to_s: worlds[k + 1]?.from_s ?? clock_s, arrive_s: coming_s }]
  })
  let share = 0
  let on: { way: WayIn; arrive_s: number } | undefined
  /** The way that those are sent who have not passed the closed place. */
  let leftKey: string | undefined
  let back: { share: number; travel_s: number } | undefined
  for (const step of steps) {
    const { way } = step
    if (!way) {
      share = 0
      on = back = undefined
      continue
    }
    if (on && way.key !== on.way.key && way.key !== leftKey) {
      if (share > 0 && Math.abs(step.arrive_s - on.arrive_s) < SAME_S) leftKey = way.key
      else {
        if (share > 0) back = { share, travel_s: on.way.travel_s }
        share = 0
        leftKey = undefined
      }
    }
    on = { way: leftKey === way.key && on ? on.way : way, arrive_s: step.arrive_s }
    const rolls_s = step.arrive_s - on.way.travel_s - step.to_s
    if (back && rolls_s <= 0) back = undefined
    if (!back) share = Math.max(share, Math.min(1, -rolls_s / on.way.travel_s))
  }
  if (!on) return {}
  const rolls_s = arrive_s - on.way.travel_s - clock_s
  if (back) return { alongShare: Math.min(back.share, rolls_s / back.travel_s), isOnPlannedWay: true }
  if (share <= 0 && rolls_s > 0) return { rolls_s }
  return { alongShare: Math.max(0, share), ...(leftKey !== undefined && { isOnPlannedWay: true }) }
}

function findWayIn({ bundle, conditions, planned, spec }: World, tenderId: string): WayIn | undefined {
  const unit = findApparatus(bundle, tenderId)
  const station = findStation(bundle, unit?.stationId)
  const planned_s = planned.tenders.find(({ id }) => id === tenderId)?.arrive_s
  const tender = spec.tenders.find(({ id }) => id === tenderId)
  if (!station || !tender || planned_s === undefined) return undefined
  const on = waysNow(bundle, conditions)(tenderId, station.id, spec.dumps[tender.dumpIndex]?.id ?? '')
  if (on.kind === 'none') return undefined
  if (on.kind === 'round') return { key: `round ${on.detour.travel_s}`, travel_s: on.detour.travel_s }
  const turnout_s = unit?.turnout_s ?? station.turnout_s ?? defaults.turnout_s.value
  const delay_s = bundle.plan.tenders.find((task) => task.tenderId === tenderId)?.delay_s ?? 0
  const travel_s = Math.max(0, planned_s - turnout_s - delay_s)
  return { key: `planned ${travel_s}`, travel_s }
}
