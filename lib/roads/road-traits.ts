import { lengthLimitFromTag, speedLimitFromTag, weightLimitFromTag, type PostedLimit, type Tags } from '../osm'
import { classSpeed_mph, type RoadClass } from './road-class'
import { roadFlag } from './road-flags'
import { groundOf } from './surface-caps'

/** What one mapped road means for a heavy vehicle; NaN is unknown. */
export type RoadTraits = {
  readonly flags: number
  /** Speed a tender is expected to hold, [mph]. */
  readonly speedForward_mph: number
  readonly speedBackward_mph: number
  readonly maxWeight_lb: number
  readonly maxHeight_ft: number
  readonly maxWidth_ft: number
}

/** A road narrower than this lets no two vehicles pass. Access roads to draft sites want 12 ft (trade figures, design notes). */
const NARROW_FT = 12
/** Two-way single-lane roads are driven ready to stop; private yards and farm roads slower still. Common practice, no source. */
const NARROW_CAP_MPH = 25
const LIMITED_ACCESS_CAP_MPH = 15

const opened = new Set(['yes', 'designated', 'official', 'permissive'])
const limited = new Set([
  'private', 'destination', 'customers', 'delivery', 'permit', 'residents', 'agricultural', 'forestry', 'agricultural;forestry',
  'forestry;agricultural', 'military', 'employees', 'students', 'discouraged', 'emergency', 'psv', 'bus', 'service',
])

/**
 * Access of a fire apparatus, by the most specific tag that says something: `emergency`,
 * then `motor_vehicle` (or `motorcar`), `vehicle`, `access`. `no` closes the road; private
 * and other limited access lets an apparatus in, with a caution, because an emergency
 * opens it by law nearly everywhere. `hgv` is about goods traffic: it cautions and never
 * closes.
 */
function accessFlags(tags: Tags): number {
  const heavy = tags['hgv'] === 'no' || tags['hgv'] === 'destination' || tags['hgv'] === 'delivery' ? roadFlag.heavyBanned : 0
  for (const key of ['emergency', 'motor_vehicle', 'motorcar', 'vehicle', 'access']) {
    const value = tags[key]
    if (value === undefined) continue
    if (opened.has(value)) return heavy
    if (value === 'no') return heavy | roadFlag.noAccess
    if (limited.has(value)) return heavy | roadFlag.limitedAccess
  }
  return heavy
}

/** @source one-way rules of the OpenStreetMap wiki (from memory): motorways and roundabouts are one-way unless tagged otherwise */
function directionFlags(tags: Tags, roadClass: RoadClass): number {
  if (tags['oneway:emergency'] === 'no') return 0
  const value = tags['oneway:motor_vehicle'] ?? tags['oneway']
  if (value === '-1' || value === 'reverse') return roadFlag.onewayBackward
  if (value === 'yes' || value === 'true' || value === '1') return roadFlag.onewayForward
  if (value === 'reversible') return roadFlag.reversible
  if (value === 'no' || value === 'false' || value === '0' || value === 'alternating') return 0
  const isImplied = tags['junction'] === 'roundabout' || tags['junction'] === 'circular' || roadClass === 'motorway' || roadClass === 'motorway_link'
  return isImplied ? roadFlag.onewayForward : 0
}

const strictestOf = (limits: readonly PostedLimit[]): number =>
  Math.min(...limits.map((found) => (found.state === 'limit' ? found.value : Infinity)))

const nanIfUnlimited = (value: number): number => (value === Infinity ? NaN : value)

function weightOf(tags: Tags): { maxWeight_lb: number; flags: number } {
  // The lowest posting rules: which of them binds a fire apparatus is for the officer to say, with a road note.
  const keys = ['maxweight', 'maxweight:hgv', 'maxweight:emergency', 'maxweightrating', 'maxweightrating:hgv', 'maxgcweight']
  const maxWeight_lb = nanIfUnlimited(strictestOf(keys.map((key) => weightLimitFromTag(tags[key]))))
  const isOtherwise = ['maxweight:conditional', 'maxaxleload', 'maxbogieweight'].some((key) => tags[key] !== undefined)
  const isNone = Number.isNaN(maxWeight_lb) && weightLimitFromTag(tags['maxweight']).state === 'none'
  return { maxWeight_lb, flags: (isOtherwise ? roadFlag.weightOtherwise : 0) | (isNone ? roadFlag.weightPostedNone : 0) }
}

const isSaid = (value: string | undefined): boolean => value !== undefined && value !== 'no'

function placeFlags(tags: Tags): number {
  const { bridge, tunnel, ford, junction, seasonal, winter_road: winter, ice_road: ice } = tags
  return (
    (isSaid(bridge) ? roadFlag.bridge : 0) |
    (bridge === 'movable' || tags['bridge:movable'] !== undefined ? roadFlag.movableBridge : 0) |
    (isSaid(tunnel) || isSaid(tags['covered']) ? roadFlag.tunnel : 0) |
    (isSaid(ford) ? roadFlag.ford : 0) |
    (junction === 'roundabout' || junction === 'circular' ? roadFlag.roundabout : 0) |
    (isSaid(seasonal) || isSaid(winter) || isSaid(ice) ? roadFlag.seasonal : 0) |
    (tags['maxlength'] !== undefined ? roadFlag.lengthPosted : 0) |
    (isSaid(tags['passing_places']) ? roadFlag.passingPlaces : 0)
  )
}

/** Speed of a tender: the slowest of what class, posting, ground, width and access allow. */
export function roadTraitsOf(tags: Tags, roadClass: RoadClass): RoadTraits {
  const ground = groundOf(tags, roadClass === 'track' || roadClass === 'opened_path')
  const direction = directionFlags(tags, roadClass)
  const access = accessFlags(tags)
  const weight = weightOf(tags)
  const width_ft = nanIfUnlimited(strictestOf([lengthLimitFromTag(tags['width']), lengthLimitFromTag(tags['est_width'])]))
  const isTwoWay = (direction & (roadFlag.onewayForward | roadFlag.onewayBackward)) === 0
  const isNarrow = isTwoWay && ((tags['lanes'] === '1') || width_ft < NARROW_FT)
  // A solid track carries the speed of its grade, not the guess for tracks of unknown grade.
  const base_mph = roadClass === 'track' && ground.cap_mph !== Infinity ? ground.cap_mph : Math.min(classSpeed_mph[roadClass], ground.cap_mph)
  const cap_mph = Math.min(
    base_mph,
    isNarrow ? NARROW_CAP_MPH : Infinity,
    access & roadFlag.limitedAccess ? LIMITED_ACCESS_CAP_MPH : Infinity,
  )
  const posted_mph = (...keys: string[]): number => strictestOf(keys.map((key) => speedLimitFromTag(tags[key])))
  return {
    flags:
      direction | access | weight.flags | placeFlags(tags) |
      (ground.isUnpaved ? roadFlag.unpaved : 0) |
      (ground.isSoft ? roadFlag.soft : 0) |
      (ground.isImpassable ? roadFlag.impassable : 0) |
      (isNarrow ? roadFlag.narrow : 0),
    speedForward_mph: Math.min(cap_mph, posted_mph('maxspeed', 'maxspeed:forward', 'maxspeed:hgv', 'maxspeed:advisory')),
    speedBackward_mph: Math.min(cap_mph, posted_mph('maxspeed', 'maxspeed:backward', 'maxspeed:hgv', 'maxspeed:advisory')),
    maxWeight_lb: weight.maxWeight_lb,
    maxHeight_ft: nanIfUnlimited(strictestOf(['maxheight', 'maxheight:physical', 'maxheight:hgv'].map((key) => lengthLimitFromTag(tags[key])))),
    maxWidth_ft: nanIfUnlimited(
      strictestOf([...['maxwidth', 'maxwidth:physical', 'maxwidth:hgv'].map((key) => lengthLimitFromTag(tags[key])), widthAsLimit(width_ft)]),
    ),
  }
}

/** A mapped width is a limit too: nothing wider than the road drives on it. */
const widthAsLimit = (width_ft: number): PostedLimit => (Number.isNaN(width_ft) ? { state: 'unknown' } : { state: 'limit', value: width_ft })
