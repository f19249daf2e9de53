import type { Tags } from './osm-extract'

/**
 * The keys that are kept. A county's file carries hundreds of keys; only these change a
 * route, a drawn map or a list of possible sources.
 */
const keptKeys = new Set([
  'highway', 'service', 'area', 'oneway', 'oneway:motor_vehicle', 'oneway:emergency', 'junction', 'route',
  'maxspeed', 'maxspeed:forward', 'maxspeed:backward', 'maxspeed:hgv', 'maxspeed:advisory',
  'maxweight', 'maxweight:hgv', 'maxweight:conditional', 'maxweight:emergency', 'maxweightrating', 'maxweightrating:hgv',
  'maxgcweight', 'maxaxleload', 'maxbogieweight',
  'maxheight', 'maxheight:physical', 'maxheight:hgv', 'maxwidth', 'maxwidth:physical', 'maxwidth:hgv', 'maxlength',
  'access', 'vehicle', 'motor_vehicle', 'motorcar', 'hgv', 'emergency',
  'surface', 'tracktype', 'smoothness', 'width', 'est_width', 'lanes', 'passing_places', 'seasonal', 'winter_road', 'ice_road',
  'bridge', 'bridge:movable', 'tunnel', 'covered', 'ford', 'barrier', 'locked', 'bollard', 'direction', 'stop',
  'traffic_signals:direction', 'crossing', 'railway', 'traffic_calming',
  'name', 'ref', 'natural', 'water', 'waterway', 'landuse', 'intermittent', 'leisure', 'building', 'place', 'man_made', 'content',
  'fire_hydrant:type', 'fire_hydrant:diameter', 'fire_hydrant:pressure', 'fire_hydrant:position', 'fire_hydrant:count',
  'couplings', 'couplings:type', 'couplings:diameters', 'water_source', 'flow_rate', 'volume', 'water_tank:volume', 'pillar:type',
  'type', 'restriction', 'restriction:hgv', 'restriction:motor_vehicle', 'restriction:conditional', 'except',
])

/** The data's own rule: no value is longer than 255 characters. Anything longer is cut, not trusted. */
const LONGEST_VALUE = 255

/** Adds one tag where its key matters. */
export function keepTag(tags: Record<string, string>, key: string, value: string): void {
  if (keptKeys.has(key)) tags[key] = value.length > LONGEST_VALUE ? value.slice(0, LONGEST_VALUE) : value
}

/** Whether a tag is kept from an extract. */
export const isKeptKey = (key: string): boolean => keptKeys.has(key)

const nodeHighways = new Set(['traffic_signals', 'stop', 'give_way', 'mini_roundabout'])
const sourceEmergencies = new Set(['fire_hydrant', 'suction_point', 'water_tank', 'fire_water_pond', 'dry_riser_inlet'])
const sourceStructures = new Set(['water_tank', 'storage_tank', 'reservoir_covered', 'water_tower', 'cistern'])

/** Whether tags name a place where water may be had. */
export function isPossibleSource(tags: Tags): boolean {
  const { emergency, man_made: structure, leisure } = tags
  return (
    (emergency !== undefined && sourceEmergencies.has(emergency) && emergency !== 'dry_riser_inlet') ||
    (structure !== undefined && sourceStructures.has(structure) && (tags['content'] ?? 'water') === 'water') ||
    leisure === 'swimming_pool'
  )
}

/** Whether a node's tags change a route, the drawn map or the list of possible sources. */
export function isNodeOfNote(tags: Tags): boolean {
  const { highway, barrier, ford, railway, place } = tags
  return (
    barrier !== undefined ||
    ford !== undefined ||
    place !== undefined ||
    railway === 'level_crossing' ||
    (highway !== undefined && nodeHighways.has(highway)) ||
    isPossibleSource(tags)
  )
}

const reservoirs = new Set(['reservoir', 'basin'])

/** Whether tags make an area of open water. */
export const isWaterArea = (tags: Tags): boolean =>
  tags['natural'] === 'water' || tags['waterway'] === 'riverbank' || reservoirs.has(tags['landuse'] ?? '')

/** Whether a way's tags make it worth keeping for itself. */
export const isWayOfNote = (tags: Tags): boolean =>
  tags['highway'] !== undefined ||
  tags['waterway'] !== undefined ||
  tags['building'] !== undefined ||
  isWaterArea(tags) ||
  isPossibleSource(tags)

/** Whether a relation bans or orders a turn. */
export const isRestriction = (tags: Tags): boolean => (tags['type'] ?? '').startsWith('restriction')

/** Whether a relation's tags make it worth keeping: a turn restriction, water or a building made of several ways. */
export const isRelationOfNote = (tags: Tags): boolean =>
  isRestriction(tags) || (tags['type'] === 'multipolygon' && (isWaterArea(tags) || tags['building'] !== undefined))
