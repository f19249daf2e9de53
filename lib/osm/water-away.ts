import { isInRing, nearestOnLine, type Point } from '../geo'
import { feetFromMetres } from '../units'
import type { DistrictMap, MapFeature } from './district-map'

/** A source's own water is the mapped water that lies no farther from its point than this. Assumed. */
const OWN_WATER_FT = 150

/**
 * How far a place stands from the water of a source, as the map has it drawn: to the nearest shore or waterway, 0 in the water.
 *
 * The source's water is what is drawn at its point, and all that bears the same name: a stream is drawn in many pieces.
 *
 * @param source a point in the water or on its bank
 * @returns [ft], to within what the map is off by; undefined where no water is drawn at the source
 */
export function waterAway_ft({ features }: Pick<DistrictMap, 'features'>, source: Point, place: Point): number | undefined {
  const water = features.filter(({ layer }) => layer === 'water' || layer === 'waterway')
  const here = water.filter((one) => away_ft(one, source) <= OWN_WATER_FT)
  if (here.length === 0) return undefined
  const names = new Set(here.flatMap(({ name }) => (name === '' ? [] : [name])))
  return Math.min(...[...here, ...water.filter(({ name }) => names.has(name))].map((one) => away_ft(one, place)))
}

function away_ft({ runs, shape }: MapFeature, place: Point): number {
  if (shape === 'area' && runs.reduce((inside, ring) => inside !== isInRing(ring, place), false)) return 0
  return feetFromMetres(runs.reduce((least, run) => {
    const closed = shape === 'area' && run[0] ? [...run, run[0]] : run
    return closed.length < 2 ? least : Math.min(least, nearestOnLine(closed, place).distance_m)
  }, Infinity))
}
