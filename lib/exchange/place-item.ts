import { alongM, distanceM, type Point } from '../geo'
import { issue, type Issue } from '../issue'
import { waterAreas } from '../osm'
import { FIRE_GROUND, type District, type Plan } from '../plan'
import { feetFromMetres, milesFromMetres } from '../units'
import type { ItemList, Shape } from './place'

/** Where places go: a district, and for parts of a plan the plan. */
export type Target = { readonly district: District; readonly plan?: Plan }

/** The part of an item that its shape gives, or the issue why it gives none. */
export type Placed = { readonly fields: Readonly<Record<string, unknown>>; readonly point: Point } | Issue

/** The ends of a way lie within so much of the places it joins: a long lane and a phone's error. */
const REACH_FT = 1000
/** Points a person sets by hand; more are a track that was driven, whose error would lead the way down side roads. */
const MOST_VIA = 20

/** Puts a shape into an item of a list: a point where one is asked for, a line for a lay or a way. */
export function placeItem(list: ItemList, shape: Shape, given: Readonly<Record<string, unknown>>, target: Target): Placed {
  if (list === 'hoseLays') {
    const [first] = shape.kind === 'line' ? shape.points : []
    if (shape.kind !== 'line' || !first) return issue('exchange-needs-line', 'block')
    return shape.points.length > 400 ? issue('exchange-line-long', 'block', [], { limit: 400 }) : { fields: { points: shape.points }, point: first }
  }
  if (list === 'legNotes') return shape.kind === 'line' ? placeWay(shape, given, target) : issue('exchange-needs-line', 'block')
  if (shape.kind === 'line') return issue('exchange-needs-point', 'block')
  if (shape.kind === 'point') return { fields: { point: shape.point }, point: shape.point }
  const [area] = waterAreas({ features: [{ layer: 'water', kind: 'pond', name: '', osmId: 0, details: '', shape: 'area', runs: shape.rings, isHole: shape.rings.map((_, i) => i > 0) }] })
  if (!area) return issue('exchange-area-empty', 'block')
  return { fields: { point: area.point, ...(list === 'sources' && given.surface_sqft === undefined && { surface_sqft: Math.round(area.surface_sqft) }) }, point: area.point }
}

/** A way between two places of the plan, by its ends where the file does not name them. */
function placeWay({ points, duration_s }: Shape & { kind: 'line' }, given: Readonly<Record<string, unknown>>, target: Target): Placed {
  const first = points[0], last = points.at(-1)
  if (!first || !last || points.length < 2) return issue('exchange-needs-line', 'block')
  const inner = points.slice(1, -1)
  if (given.fromId !== undefined && given.toId !== undefined) return { fields: inner.length > 0 ? { via: inner } : {}, point: first }
  const from = nearestEnd(first, target), to = nearestEnd(last, target)
  if (!from || !to || from === to) return issue('exchange-no-ends', 'block', [], { reach_ft: REACH_FT })
  const length_m = alongM(points).at(-1) ?? 0
  return {
    point: first,
    fields: {
      fromId: from, toId: to,
      ...(inner.length > 0 && inner.length <= MOST_VIA && duration_s === undefined && { via: inner }),
      ...(duration_s !== undefined && { travel_s: Math.round(duration_s) }),
      ...((duration_s !== undefined || inner.length > MOST_VIA) && { distance_mi: Math.round(milesFromMetres(length_m) * 1000) / 1000 }),
    },
  }
}

/** Places that ways of a plan lead between, with the ids they go by. */
export function waysEnds({ district, plan }: Target): { id: string; name: string; point: Point }[] {
  const fire = plan?.fireGround ?? district.hazards.find(({ id }) => id === plan?.hazardId)?.point
  return [
    ...(plan ? [...plan.fillSites, ...plan.dumpSites] : []), ...district.stations,
  ].map(({ id, name, point }) => ({ id: id as string, name, point })).concat(fire ? [{ id: FIRE_GROUND, name: '', point: fire }] : [])
}

function nearestEnd(point: Point, target: Target): string | undefined {
  let best: { id: string; away_ft: number } | undefined
  for (const end of waysEnds(target)) {
    const away_ft = feetFromMetres(distanceM(end.point, point))
    if (away_ft <= REACH_FT && (!best || away_ft < best.away_ft)) best = { id: end.id, away_ft }
  }
  return best?.id
}
