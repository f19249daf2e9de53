import type { Spot } from './frame'
import type { Area } from './geometry/contour'
import { findCrossing } from './geometry/line'
import { centreOf } from './geometry/polygon'
import { gap, spot } from './geometry/spot'
import { buildHeightField, type HeightField } from './land/height-field'
import { buildStreams, type Stream } from './land/streams'
import { buildWater, type Barrier, type WaterArea } from './land/water-areas'
import { buildWoods, type Clearing } from './land/woods'
import { layPlan, layThroughRoads } from './roads/lay-roads'
import type { Network, Road, RoadNode } from './roads/network'
import { railwayLine, railwayTags } from './roads/railway'
import { lesserRoads } from './roads/road-plan'
import { villageStreets } from './roads/village-streets'
import type { Building } from './settle/building'
import { countryHouses } from './settle/country-houses'
import { layFarms, type Farm } from './settle/farms'
import { layFields, type Field } from './settle/fields'
import { GroundIndex } from './settle/ground-index'
import { placeLandmarks } from './settle/landmarks'
import { farmSiteRoads, siteRoads } from './settle/site-roads'
import { streetHouses } from './settle/street-houses'

export type Landscape = {
  streams: readonly Stream[]
  field: HeightField
  water: readonly WaterArea[]
  barriers: readonly Barrier[]
  network: Network
  railway: Road
  levelCrossings: readonly RoadNode[]
  /** Where the road that passes under the railway does so. */
  underpass: Spot
  farms: readonly Farm[]
  buildings: readonly Building[]
  fields: readonly Field[]
  woods: readonly Area[]
}

/** Middle and reach of each village: streets have houses there, country roads have none. */
const villages = [
  { x: 5960, y: 5540, radius_m: 640 },
  { x: 8800, y: 3350, radius_m: 470 },
  { x: 560, y: 3800, radius_m: 260 },
] as const

const isVillage = (x: number, y: number): boolean => villages.some((village) => gap(village, { x, y }) < village.radius_m)

const LANE_HALF_M: Readonly<Record<string, number>> = { primary: 6, tertiary: 5, unclassified: 4, residential: 4, service: 2, track: 2 }

/** The whole district, in the order in which such places came about: water, land, roads, railway, streets, farms, woods. */
export function buildLandscape(): Landscape {
  const streams = buildStreams()
  const field = buildHeightField(streams)
  const { areas: water, barriers } = buildWater(field, streams)
  const { network, finder } = layThroughRoads(field, streams, water)
  const railway = network.lay('railway', railwayLine(), railwayTags, { isApart: true })
  for (const plan of [...villageStreets, ...siteRoads]) layPlan(network, finder, plan)

  const ground = new GroundIndex()
  for (const { water: line, width_m } of streams) ground.addLine(line, width_m / 2 + 6)
  for (const { kind, outer } of water) if (kind !== 'river') ground.addRing(outer)
  for (const { nodes, tags } of network.roads) ground.addLine(nodes.map((node) => node.spot), tags.railway ? 8 : (LANE_HALF_M[tags.highway ?? ''] ?? 3))
  const landmarks = placeLandmarks(ground)
  const { farms, buildings: farmBuildings } = layFarms(network, finder, ground)
  for (const plan of [...farmSiteRoads, ...lesserRoads]) {
    layPlan(network, finder, plan)
    ground.addLine(network.road(plan.key).nodes.map((node) => node.spot), 3)
  }
  const wet = new GroundIndex()
  for (const { water: line, width_m } of streams) wet.addLine(line, width_m / 2)
  const houses = [...streetHouses(network, ground, isVillage), ...countryHouses(field, network, ground, wet, isVillage)]
  const fields = layFields(field, farms, ground)
  const { levelCrossings, underpass } = crossRailway(network, railway)
  return {
    streams, field, water, barriers, network, railway, levelCrossings, underpass, farms, fields,
    buildings: [...landmarks, ...farmBuildings, ...houses],
    woods: buildWoods(field, clearingsAround(farms, fields, water, houses)),
  }
}

/** Roads meet the railway on the level, but for Depot Street, which dips under it. */
function crossRailway(network: Network, railway: Road): { levelCrossings: RoadNode[]; underpass: Spot } {
  const levelCrossings: RoadNode[] = []
  let underpass = spot(0, 0)
  for (const road of network.roads) {
    if (road === railway) continue
    for (let i = 0; i + 1 < road.nodes.length; i++)
      for (let k = 0; k + 1 < railway.nodes.length; k++) {
        const crossing = findCrossing(road.nodes[i]!.spot, road.nodes[i + 1]!.spot, railway.nodes[k]!.spot, railway.nodes[k + 1]!.spot)
        if (!crossing) continue
        if (road.key === 'depotstreet') {
          underpass = crossing.spot
          continue
        }
        const node = network.cut(road, crossing.spot)
        if (levelCrossings.includes(node)) continue
        railway.nodes.splice(k + 1, 0, node)
        levelCrossings.push(node)
        i++
        k++
      }
  }
  return { levelCrossings, underpass }
}

function clearingsAround(farms: readonly Farm[], fields: readonly Field[], water: readonly WaterArea[], houses: readonly Building[]): Clearing[] {
  return [
    ...villages.map(({ x, y, radius_m }) => ({ at: { x, y }, radius_m: radius_m * 0.9 })),
    ...farms.map(({ at }) => ({ at, radius_m: 150 })),
    ...fields.map(({ centre }) => ({ at: centre, radius_m: 105 })),
    ...houses.map(({ ring }) => ({ at: centreOf(ring), radius_m: 38 })),
    ...water.filter(({ kind }) => kind !== 'river').flatMap(({ outer }) => outer.map((at) => ({ at, radius_m: 26 }))),
  ]
}
