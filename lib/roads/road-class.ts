import type { Tags } from '../osm'

/** Classes of road, by their tag; the order is stored in graphs and must not change within a version. */
export const roadClasses = [
  'motorway', 'trunk', 'primary', 'secondary', 'tertiary', 'unclassified', 'residential', 'living_street',
  'service', 'track', 'motorway_link', 'trunk_link', 'primary_link', 'secondary_link', 'tertiary_link', 'road', 'opened_path',
] as const
export type RoadClass = (typeof roadClasses)[number]

/**
 * Speed a heavy tender is expected to hold on a dry road of each class when nothing slower
 * is posted or known, in mph. Common practice, no source: chosen so that a county route
 * averages near the 35 mph of the handbook travel formula, and well below the 60 mph to
 * which heavy tenders are governed (NFPA 1901 since 2009, from memory).
 */
export const classSpeed_mph: Readonly<Record<RoadClass, number>> = {
  motorway: 55, trunk: 50, primary: 45, secondary: 40, tertiary: 35, unclassified: 30, residential: 25, living_street: 10,
  service: 15, track: 10, motorway_link: 35, trunk_link: 30, primary_link: 25, secondary_link: 25, tertiary_link: 25, road: 20, opened_path: 8,
}

const classOfHighway = new Map<string, RoadClass>(roadClasses.filter((name) => name !== 'opened_path').map((name) => [name, name]))

/** Ways that carry vehicles only where a tag says so: a farm lane mapped as a path, a town square. */
const pathHighways = new Set(['path', 'footway', 'cycleway', 'bridleway', 'pedestrian', 'busway', 'emergency_bay'])
const opening = new Set(['yes', 'designated', 'official', 'permissive', 'destination', 'delivery', 'private', 'agricultural', 'forestry', 'customers'])

/** Class of a way as a road, or undefined if no vehicle is meant to use it. */
export function findRoadClass(tags: Tags): RoadClass | undefined {
  const { highway, area, route } = tags
  // An area's outline is no lane; a ferry is no road.
  if (highway === undefined || area === 'yes' || route === 'ferry') return undefined
  const known = classOfHighway.get(highway)
  if (known) return known
  if (!pathHighways.has(highway)) return undefined
  const isOpened = [tags['emergency'], tags['hgv'], tags['motor_vehicle'], tags['motorcar'], tags['vehicle']].some(
    (value) => value !== undefined && opening.has(value),
  )
  return isOpened ? 'opened_path' : undefined
}
