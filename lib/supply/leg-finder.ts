import type { Issue } from '../issue'
import type { Leg, LegAsk, RoadNote } from '../plan'
import { findRoute, isRoute, weighGraph, type RoadGraph, type RoadWeights, type Route } from '../roads'

/** A found way as a bundle keeps it. */
export type FoundLeg = Omit<Leg, 'key' | 'by'>

/**
 * Answers leg asks over a district's roads. The graph is weighed once for each vehicle and
 * load that asks.
 *
 * @param notes the officer's road notes; they stand against what was imported
 */
export function legFinder(graph: RoadGraph, notes: readonly RoadNote[]): (ask: LegAsk) => FoundLeg | Issue {
  const weighed = new Map<string, RoadWeights>()
  return (ask) => {
    const { gross_lb, height_ft, width_ft } = ask
    const key = `${gross_lb} ${height_ft} ${width_ft}`
    const weights = weighed.get(key) ?? weighGraph(graph, { gross_lb, height_ft, width_ft }, notes)
    weighed.set(key, weights)
    const route = findRoute(graph, weights, ask.from, ask.to, ask.via)
    return isRoute(route) ? legFromRoute(route) : route
  }
}

/** A route as a leg: its line, the names of its roads in order, what a driver must know. */
export function legFromRoute({ distance_mi, travel_s, path, steps, cautions }: Route): FoundLeg {
  const roads = steps.map(({ name, ref }) => name || ref).filter((name, index, all) => name !== '' && name !== all[index - 1])
  return {
    distance_mi, travel_s,
    path: path.map(({ lat, lon }) => ({ lat, lon })),
    ...(roads.length > 0 && { roads: roads.slice(0, 400) }),
    ...(cautions.length > 0 && { cautions: cautions.slice(0, 200).map(({ code, severity, values }) => ({ code, severity: severity === 'note' ? ('note' as const) : ('warn' as const), values })) }),
  }
}
