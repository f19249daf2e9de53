import { isInRing, type Point } from '../geo'
import { placeKinds, type DistrictMap, type MapFeature, type MapLayer, type SourceKind } from './district-map'
import { isPossibleSource, isRestriction, isWaterArea } from './kept-tags'
import { DEGREES_E7, MISSING_NODE, type OsmExtract, type Tags } from './osm-extract'
import { ringsFromWays } from './rings'

const layerOfHighway: Readonly<Record<string, MapLayer>> = {
  motorway: 'majorRoad', trunk: 'majorRoad', motorway_link: 'majorRoad', trunk_link: 'majorRoad',
  primary: 'mainRoad', secondary: 'mainRoad', primary_link: 'mainRoad', secondary_link: 'mainRoad',
  tertiary: 'minorRoad', tertiary_link: 'minorRoad',
  unclassified: 'localRoad', residential: 'localRoad', living_street: 'localRoad', road: 'localRoad',
  service: 'serviceRoad', track: 'track',
}

const drawnWaterways = new Set(['river', 'stream', 'canal', 'drain', 'ditch'])

/** What the planner draws of an extract: roads by class, water, waterways, buildings, places, and possible sources. */
export function mapFeatures(extract: OsmExtract): DistrictMap {
  const features: MapFeature[] = []
  extract.taggedNode.forEach((index, i) => {
    const tags = extract.nodeTags[i] ?? {}
    const osmId = extract.nodeId[index] ?? 0
    const point = pointOf(extract, index)
    const source = sourceKindOf(tags)
    if (source) features.push({ ...plain, layer: 'source', name: tags['name'] ?? '', kind: source, osmId, details: detailsOf(tags), shape: 'point', runs: [[point]] })
    const place = tags['place']
    if (place !== undefined && tags['name'] !== undefined && placeKinds.some((kind) => kind === place)) {
      features.push({ ...plain, layer: 'place', name: tags['name'], kind: place, osmId, shape: 'point', runs: [[point]] })
    }
  })
  extract.wayTags.forEach((tags, way) => features.push(...wayFeatures(extract, way, tags)))
  for (const { id, tags, members } of extract.relations) {
    if (isRestriction(tags)) continue
    const rings = (isWanted: (role: string) => boolean): number[][] =>
      ringsFromWays(members.filter(({ kind, role }) => kind === 'way' && isWanted(role)).flatMap((member) => nodesOfWayId(extract, member.id)))
    const area = areaRuns(extract, rings((role) => role !== 'inner'), rings((role) => role === 'inner'))
    if (area.runs.length > 0) features.push({ ...plain, ...areaKind(tags), osmId: id, shape: 'area', ...area })
  }
  return { bounds: extract.bounds, dataDate: extract.dataDate ?? '', features }
}

const plain = { details: '', isHole: [] as readonly boolean[] }

function areaKind(tags: Tags): Pick<MapFeature, 'layer' | 'name' | 'kind'> {
  const name = tags['name'] ?? ''
  if (!isWaterArea(tags)) return { layer: 'building', name, kind: '' }
  return { layer: 'water', name, kind: tags['water'] ?? tags['landuse'] ?? tags['waterway'] ?? '' }
}

const pointOf = ({ nodeLatE7, nodeLonE7 }: OsmExtract, index: number): Point => ({
  lat: (nodeLatE7[index] ?? 0) / DEGREES_E7,
  lon: (nodeLonE7[index] ?? 0) / DEGREES_E7,
})

const nodesOfWay = ({ wayStart, wayNode }: OsmExtract, way: number): number[] => [...wayNode.subarray(wayStart[way], wayStart[way + 1])]

function nodesOfWayId(extract: OsmExtract, id: number): number[][] {
  let low = 0, high = extract.wayId.length - 1
  while (low <= high) {
    const middle = (low + high) >>> 1
    const found = extract.wayId[middle] ?? 0
    if (found === id) return [nodesOfWay(extract, middle)]
    if (found < id) low = middle + 1
    else high = middle - 1
  }
  return []
}

function wayFeatures(extract: OsmExtract, way: number, tags: Tags): MapFeature[] {
  const nodes = nodesOfWay(extract, way)
  const isClosed = nodes.length > 3 && nodes[0] === nodes[nodes.length - 1] && !nodes.includes(MISSING_NODE)
  const osmId = extract.wayId[way] ?? 0
  const features: MapFeature[] = []
  const layer = layerOfHighway[tags['highway'] ?? '']
  const line = (kind: string, lineLayer: MapLayer, name: string): void => {
    for (const run of knownRuns(nodes)) {
      features.push({ ...plain, layer: lineLayer, name, kind, osmId, shape: 'line', runs: [run.map((index) => pointOf(extract, index))] })
    }
  }
  if (layer) line(tags['bridge'] !== undefined && tags['bridge'] !== 'no' ? 'bridge' : '', layer, tags['name'] ?? tags['ref'] ?? '')
  if (isClosed && (isWaterArea(tags) || (tags['building'] !== undefined && tags['building'] !== 'no'))) {
    features.push({ ...plain, ...areaKind(tags), osmId, shape: 'area', ...areaRuns(extract, [nodes], []) })
  } else if (drawnWaterways.has(tags['waterway'] ?? '')) line(tags['waterway'] ?? '', 'waterway', tags['name'] ?? '')
  const source = sourceKindOf(tags)
  if (source) {
    const points = nodes.filter((index) => index !== MISSING_NODE).map((index) => pointOf(extract, index))
    const middle = middleOf(points)
    if (middle) features.push({ ...plain, layer: 'source', name: tags['name'] ?? '', kind: source, osmId, details: detailsOf(tags), shape: 'point', runs: [[middle]] })
  }
  return features
}

/** Runs of nodes the file holds; a way that leaves the file and comes back is drawn in pieces. */
function knownRuns(nodes: readonly number[]): number[][] {
  const runs: number[][] = [[]]
  for (const index of nodes) {
    if (index === MISSING_NODE) runs.push([])
    else runs[runs.length - 1]?.push(index)
  }
  return runs.filter((run) => run.length > 1)
}

function middleOf(points: readonly Point[]): Point | undefined {
  if (points.length === 0) return undefined
  const sum = points.reduce((total, { lat, lon }) => ({ lat: total.lat + lat, lon: total.lon + lon }), { lat: 0, lon: 0 })
  return { lat: sum.lat / points.length, lon: sum.lon / points.length }
}

/** Outer rings, each followed by the holes whose first point lies in it. */
function areaRuns(extract: OsmExtract, outers: readonly number[][], inners: readonly number[][]): { runs: Point[][]; isHole: boolean[] } {
  const runs: Point[][] = [], isHole: boolean[] = []
  const holes = inners.map((ring) => ring.map((index) => pointOf(extract, index)))
  for (const ring of outers) {
    const outer = ring.map((index) => pointOf(extract, index))
    runs.push(outer)
    isHole.push(false)
    for (const hole of holes) {
      if (!hole[0] || !isInRing(outer, hole[0])) continue
      runs.push(hole)
      isHole.push(true)
    }
  }
  return { runs, isHole }
}

/** Kind of source that tags name, or undefined. A hydrant of type pond draws on open water: it is no pressure hydrant. */
export function sourceKindOf(tags: Tags): SourceKind | undefined {
  if (!isPossibleSource(tags)) return undefined
  if (tags['emergency'] === 'fire_hydrant') return tags['fire_hydrant:type'] === 'pond' ? 'pondHydrant' : 'hydrant'
  if (tags['emergency'] === 'suction_point') return 'suctionPoint'
  if (tags['emergency'] === 'fire_water_pond') return 'pond'
  if (tags['leisure'] === 'swimming_pool') return 'pool'
  return tags['man_made'] === 'cistern' ? 'cistern' : 'tank'
}

const detailKeys = [
  'fire_hydrant:type', 'fire_hydrant:diameter', 'fire_hydrant:pressure', 'fire_hydrant:position', 'fire_hydrant:count', 'pillar:type', 'couplings',
  'couplings:type', 'couplings:diameters', 'water_source', 'flow_rate', 'volume', 'water_tank:volume', 'access', 'ref',
]

const detailsOf = (tags: Tags): string => detailKeys.flatMap((key) => (tags[key] === undefined ? [] : [`${key}=${tags[key]}`])).join(';')
