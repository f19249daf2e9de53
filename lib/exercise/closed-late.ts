import { findApparatus, findStation, type Bundle } from '../plan'
import type { ShuttleSpec } from '../shuttle'
import { defaults, legUses, wayOf } from '../supply'
import { isNever, meetsAt, NEVER_S, waysNow, type Closure, type Roads } from './closures'
import type { Conditions } from './conditions'

/** Who still comes from a station: the item that waits, the vehicle, where it goes, and when it sets off. */
type Coming = { readonly id: string; readonly unitId: string; readonly toId: string; readonly sets_s: number; readonly travel_s: number; readonly path: readonly { lat: number; lon: number }[] }

/**
 * Those on their way from a station when a road is closed. Who has passed the closed place goes on. Who has not left yet takes the way
 * round; who is short of it turns round where it is, drives back to its station and takes the way round from there: later than it
 * would be, never sooner. Who has no way round does not come while the road is closed.
 */
export function lateRound(conditions: Conditions, bundle: Bundle, spec: ShuttleSpec, closure: Closure, at_s: number): Conditions['late_s'] {
  const roads: Roads = { closed: [...conditions.closed, closure], detours: conditions.detours }
  const now = waysNow(bundle, roads)
  const late_s: Record<string, number> = { ...conditions.late_s }
  for (const { id, unitId, toId, sets_s, travel_s, path } of comingOf(bundle, spec, conditions, at_s)) {
    const met = meetsAt(path, [closure])
    const driven_s = Math.max(0, at_s - sets_s)
    if (met === undefined || driven_s > met * travel_s) continue
    const way = now(unitId, stationOf(bundle, unitId), toId)
    late_s[id] = (late_s[id] ?? 0) + (way.kind === 'round' ? 2 * driven_s + way.detour.travel_s - travel_s : way.kind === 'none' ? NEVER_S : 0)
  }
  return late_s
}

/** Those that were held at their station set off when a road is opened that they needed. */
export function lateAfterOpening(conditions: Conditions, bundle: Bundle, spec: ShuttleSpec, at_s: number): Conditions['late_s'] {
  const now = waysNow(bundle, conditions)
  const late_s: Record<string, number> = { ...conditions.late_s }
  for (const { id, unitId, toId, sets_s } of comingOf(bundle, spec, conditions, at_s)) {
    const held_s = late_s[id] ?? 0
    if (!isNever(held_s)) continue
    const way = now(unitId, stationOf(bundle, unitId), toId)
    if (way.kind !== 'none') late_s[id] = held_s - NEVER_S + Math.max(0, at_s - (sets_s - NEVER_S))
  }
  return late_s
}

const stationOf = (bundle: Bundle, unitId: string): string => findApparatus(bundle, unitId)?.stationId ?? ''

function comingOf(bundle: Bundle, spec: ShuttleSpec, { late_s, sent_s }: Conditions, at_s: number): Coming[] {
  const { plan } = bundle
  const uses = legUses(bundle)
  const legs = new Map(bundle.legs.map((leg) => [leg.key, leg]))
  const waiting = [
    ...spec.tenders.flatMap(({ id, arrive_s = Infinity, dumpIndex }) => (arrive_s > at_s ? [{ id, unitId: id, toId: spec.dumps[dumpIndex]?.id }] : [])),
    ...spec.fills.flatMap(({ id, ready_s }) => (ready_s > at_s ? [{ id, unitId: plan.fillSites.find((site) => site.id === id)?.pumperId, toId: id }] : [])),
    ...spec.dumps.flatMap(({ id, pumpReady_s }) => (pumpReady_s > at_s ? [{ id, unitId: plan.dumpSites.find((site) => site.id === id)?.pumperId, toId: id }] : [])),
  ]
  return waiting.flatMap(({ id, unitId, toId }): Coming[] => {
    const use = uses.find((one) => one.apparatusId === unitId && one.toId === toId && one.fromId === stationOf(bundle, unitId ?? ''))
    const leg = use && legs.get(use.key)
    const way = use && wayOf(bundle, use)
    if (!use || unitId === undefined || toId === undefined || !leg || leg.by === 'none' || leg.path.length < 2 || !way || !('travel_s' in way)) return []
    const unit = findApparatus(bundle, unitId)
    const turnout_s = unit?.turnout_s ?? findStation(bundle, unit?.stationId)?.turnout_s ?? defaults.turnout_s.value
    const delay_s = plan.tenders.find(({ tenderId }) => tenderId === id)?.delay_s ?? 0
    return [{ id, unitId, toId, travel_s: way.travel_s, path: leg.path, sets_s: turnout_s + delay_s + (sent_s[id] ?? 0) + (late_s[id] ?? 0) }]
  })
}
