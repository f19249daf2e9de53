import type { Point } from '../geo'
import { FIRE_GROUND, type District, type Plan } from '../plan'
import { waysEnds } from './place-item'
import { districtLists, planLists, type Place, type PlaceList, type Shape } from './place'

/** A way over the roads that a plan drives, as it was found. */
export type DrivenWay = { readonly fromId: string; readonly toId: string; readonly distance_mi: number; readonly travel_s: number; readonly path: readonly Point[]; readonly load?: 'full' | 'empty' }

export type PlacesWanted = {
  readonly lists: ReadonlySet<PlaceList>
  /** What a way is called. */
  readonly wayName: (from: string, to: string) => string
  /** Ways of each plan over the roads, by its id. */
  readonly ways?: ReadonlyMap<string, readonly DrivenWay[]>
}

type Item = { readonly id: string; readonly name?: string; readonly point?: Point; readonly points?: readonly Point[]; readonly [field: string]: unknown }

/** Everything wanted of a district and its plans that has a place, in the order of the lists. */
export function placesOf(district: District, plans: readonly Plan[], { lists, wayName, ways }: PlacesWanted): Place[] {
  const places: Place[] = []
  for (const list of districtLists) if (lists.has(list)) places.push(...(district[list] as readonly Item[]).map((item) => placeFrom(list, item)))
  for (const plan of plans) {
    const nameOf = namesIn(district, plan)
    if (lists.has('fireGround') && plan.fireGround) places.push({ list: 'fireGround', id: FIRE_GROUND, name: nameOf(FIRE_GROUND), shape: { kind: 'point', point: plan.fireGround }, fields: {}, plan: plan.name })
    for (const list of planLists) {
      if (!lists.has(list)) continue
      for (const item of (plan[list] ?? []) as readonly Item[]) {
        const place = list === 'legNotes' ? wayPlace(item, district, plan, wayName(nameOf(String(item.fromId)), nameOf(String(item.toId)))) : placeFrom(list, item)
        places.push({ ...place, plan: plan.name })
      }
    }
    if (lists.has('ways'))
      for (const [index, { fromId, toId, path, ...fields }] of (ways?.get(plan.id) ?? []).entries())
        places.push({ list: 'ways', id: `${plan.id}-way-${index + 1}`, name: wayName(nameOf(fromId), nameOf(toId)), shape: { kind: 'line', points: path }, fields: { fromId, toId, ...fields }, plan: plan.name })
  }
  return places
}

function placeFrom(list: PlaceList, { id, name = '', point, points, ...fields }: Item): Place {
  const shape: Shape | undefined = point ? { kind: 'point', point } : points ? { kind: 'line', points } : undefined
  return { list, id, name, fields, ...(shape && { shape }) }
}

/** A note on a way runs from end to end through the points it is led by. */
function wayPlace({ id, via, name: _, ...fields }: Item, district: District, plan: Plan, name: string): Place {
  const ends = waysEnds({ district, plan })
  const from = ends.find((end) => end.id === fields.fromId)?.point, to = ends.find((end) => end.id === fields.toId)?.point
  return { list: 'legNotes', id, name, fields, ...(from && to && { shape: { kind: 'line' as const, points: [from, ...((via as Point[] | undefined) ?? []), to] } }) }
}

function namesIn(district: District, plan: Plan): (id: string) => string {
  const names = new Map<string, string>([...district.stations, ...plan.fillSites, ...plan.dumpSites].map(({ id, name }) => [id as string, name]))
  const fire = district.hazards.find(({ id }) => id === plan.hazardId)?.name ?? plan.name
  return (id) => (id === FIRE_GROUND ? fire : (names.get(id) ?? id))
}
