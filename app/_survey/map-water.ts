import { feetFromMetres } from '@/lib/units'
import { distanceM, type Point } from '@/lib/geo'
import { sourceKinds, waterAreas, type DistrictMap, type SourceKind } from '@/lib/osm'
import { findNearest, roadFlag, type RoadGraph } from '@/lib/roads'

/** What the map has of water: a tagged point, or open water drawn as an area. */
export const mapWaterKinds = ['pondArea', 'lakeArea', 'reservoirArea', 'basinArea', 'waterArea', ...sourceKinds] as const
export type MapWaterKind = (typeof mapWaterKinds)[number]

export type MapWater = {
  readonly osmId: number
  readonly kind: MapWaterKind
  readonly name: string
  /** What the data says of a tagged point, `key=value` by semicolons. */
  readonly details: string
  readonly point: Point
  /** Of open water only. */
  readonly surface_sqft?: number
  /** The nearest road that can be driven: its name, empty where it has none, and how far from the water's edge. */
  readonly road?: { readonly name: string; readonly away_ft: number }
}

export const isOpenWater = ({ surface_sqft }: Pick<MapWater, 'surface_sqft'>): boolean => surface_sqft !== undefined

/** Water that is drafted from: all but what a main feeds. */
export const isDraftWater = ({ kind }: Pick<MapWater, 'kind'>): boolean => kind !== 'hydrant'

const SHUT = roadFlag.noAccess | roadFlag.impassable | roadFlag.ford

/**
 * Water of a map that may be a source: open water with its surface, and what is tagged as a source. What is both is
 * named once, by its tag.
 *
 * @param graph the district's roads; without them no distance to a road is known
 */
export function mapWater(map: DistrictMap, graph: RoadGraph | undefined): MapWater[] {
  const tagged = map.features.flatMap(({ layer, kind, name, details, osmId, runs }): MapWater[] => {
    const [point] = runs[0] ?? []
    const known: SourceKind | undefined = sourceKinds.find((one) => one === kind)
    return layer === 'source' && point && known ? [{ osmId, kind: known, name, details, point, ...nearRoad(graph, [point]) }] : []
  })
  const taggedIds = new Set(tagged.map(({ osmId }) => osmId))
  const open = waterAreas(map).filter(({ osmId }) => !taggedIds.has(osmId)).map(({ osmId, kind, name, surface_sqft, point, shore }): MapWater =>
    ({ osmId, kind: `${kind}Area`, name, details: '', point, surface_sqft, ...nearRoad(graph, shore) }))
  return [...open, ...tagged]
}

function nearRoad(graph: RoadGraph | undefined, shore: readonly Point[]): Pick<MapWater, 'road'> {
  let best: { name: string; away_ft: number } | undefined
  for (const point of shore) {
    const place = graph && findNearest(graph, point, (edge) => ((graph.roadFlags[graph.edgeRoad[edge] ?? 0] ?? 0) & SHUT) === 0)
    if (!place || !graph || (best && place.distance_ft >= best.away_ft)) continue
    const road = graph.edgeRoad[place.edge] ?? 0
    best = { name: graph.texts[graph.roadName[road] ?? 0] || graph.texts[graph.roadRef[road] ?? 0] || '', away_ft: place.distance_ft }
  }
  return best ? { road: best } : {}
}

export type WaterOrder = 'road' | 'hazard' | 'size'
export type WaterFilter = { readonly kind?: 'draft' | 'open' | MapWaterKind | undefined; readonly atLeast_sqft?: number | undefined; readonly search: string; readonly order: WaterOrder }

/**
 * Those that pass the filter, in its order; what is not known comes last.
 *
 * @param hazards places of the target hazards, for the order by them
 * @param nameOf  what each is called on screen: the search looks there
 */
export function listedWater(water: readonly MapWater[], { kind, atLeast_sqft, search, order }: WaterFilter, hazards: readonly Point[], nameOf: (one: MapWater) => string): MapWater[] {
  const words = search.toLowerCase().split(/\s+/).filter(Boolean)
  const rank = (one: MapWater): number => {
    if (order === 'size') return -(one.surface_sqft ?? 0)
    return order === 'road' ? (one.road?.away_ft ?? Infinity) : hazardAway_ft(one, hazards)
  }
  return water
    .filter((one) => kind === undefined || (kind === 'draft' ? isDraftWater(one) : kind === 'open' ? isOpenWater(one) : one.kind === kind))
    .filter((one) => atLeast_sqft === undefined || (one.surface_sqft ?? 0) >= atLeast_sqft)
    .filter((one) => words.every((word) => nameOf(one).toLowerCase().includes(word)))
    .map((one) => ({ one, at: rank(one) }))
    .sort((a, b) => (a.at === b.at ? 0 : a.at - b.at))
    .map(({ one }) => one)
}

/** To the nearest target hazard, in a straight line; infinite where there is none. */
export const hazardAway_ft = ({ point }: Pick<MapWater, 'point'>, hazards: readonly Point[]): number =>
  Math.min(Infinity, ...hazards.map((hazard) => feetFromMetres(distanceM(hazard, point))))
