import { requireNotNegative, requirePositive, requireThat } from '../issue'
import type { ConstructionType } from './building'

/** Construction coefficient F by class: frame 1.5, joisted masonry 1.0, non-combustible 0.8, fire-resistive 0.6. */
export const ratingConstructionFactor: Readonly<Record<ConstructionType, number>> = { I: 0.6, II: 0.8, III: 1, IV: 0.8, V: 1.5 }
/** Most that C counts: frame and joisted masonry 8,000, the rest 6,000. */
const mostConstruction_gpm: Readonly<Record<ConstructionType, number>> = { I: 6_000, II: 6_000, III: 8_000, IV: 6_000, V: 8_000 }

/** Combustibility of contents. */
export type Contents = 'C-1' | 'C-2' | 'C-3' | 'C-4' | 'C-5'
export const contentsFactor: Readonly<Record<Contents, number>> = { 'C-1': 0.75, 'C-2': 0.85, 'C-3': 1, 'C-4': 1.15, 'C-5': 1.25 }

const LEAST_GPM = 500
const MOST_GPM = 12_000
const MOST_EXPOSURE_FACTOR = 1.6

/**
 * Construction part of the needed fire flow, unrounded and within its limits.
 *
 *   C = 18 · F · √A
 *
 * @param area_sqft    effective area, above 0
 * @param construction by type; heavy timber is taken with masonry non-combustible
 * @returns [gpm], 500 to 8,000 (6,000 for types I, II and IV)
 * @throws RangeError if not positive
 * @source needed fire flow guide 2014 (memory, high), tests/reference/needed-flow.json
 */
export function constructionFlow_gpm(area_sqft: number, construction: ConstructionType): number {
  requirePositive('area_sqft', area_sqft)
  const plain = 18 * ratingConstructionFactor[construction] * Math.sqrt(area_sqft)
  return Math.min(mostConstruction_gpm[construction], Math.max(LEAST_GPM, plain))
}

/**
 * Rounding of the rating schedule: to 250 gpm below 2,500, to 500 from there on.
 *
 * @source the 250 step: needed fire flow guide (memory, high); the 500 step: as remembered (low)
 */
export const roundRatingFlow_gpm = (flow_gpm: number): number => {
  const step = flow_gpm < 2_500 ? 250 : 500
  return Math.round(flow_gpm / step) * step
}

/**
 * Needed fire flow of a building by the rating schedule.
 *
 *   NFF = C · O · (1 + X + P), the bracket no more than 1.60, 500 to 12,000 gpm, rounded
 *
 * @param area_sqft     effective area, above 0
 * @param construction  type
 * @param contents      class of contents; default C-3
 * @param exposureShare X + P together, 0 or more; counts up to 0.60
 * @returns [gpm] at 20 psi residual
 * @throws RangeError if out of range
 * @source formula USFA Coffee Break FP-2013-45 (seen); factors needed fire flow guide 2014 (memory, high)
 */
export function ratingFlow_gpm(area_sqft: number, construction: ConstructionType, contents: Contents = 'C-3', exposureShare = 0): number {
  requireNotNegative('exposureShare', exposureShare)
  const plain = constructionFlow_gpm(area_sqft, construction) * contentsFactor[contents] * Math.min(MOST_EXPOSURE_FACTOR, 1 + exposureShare)
  return Math.min(MOST_GPM, Math.max(LEAST_GPM, roundRatingFlow_gpm(plain)))
}

/** Which table of spacing between dwellings: `newer` 30/20/10 ft bands (2012 on, memory), `older` 100/30/10 ft (seen-2nd). */
export type DwellingTable = 'newer' | 'older'

/**
 * Needed fire flow of a one- or two-family dwelling of up to two storeys, by distance to the next building.
 *
 *   older: over 100 ft 500 · 31–100 750 · 11–30 1,000 · to 10 ft 1,500 gpm
 *   newer: over 30 ft 500 · 21–30 750 · 11–20 1,000 · to 10 ft 1,500 gpm
 *
 * The older table never asks for less than the newer: it is the default.
 *
 * @param spacing_ft 0 or more
 * @param table      default `older`
 * @returns [gpm]
 * @throws RangeError if negative
 * @source rating-schedule summary page (seen-2nd); newer: 2012 schedule (memory, moderate), tests/reference/needed-flow.json
 */
export function dwellingRatingFlow_gpm(spacing_ft: number, table: DwellingTable = 'older'): number {
  requireNotNegative('spacing_ft', spacing_ft)
  const [far, near] = table === 'older' ? [100, 30] : [30, 20]
  if (spacing_ft > far) return 500
  if (spacing_ft > near) return 750
  return spacing_ft > 10 ? 1_000 : 1_500
}

/**
 * Hours the flow must last by the rating schedule: to 2,500 gpm 2 h, to 3,500 3 h, more 4 h.
 *
 * @param flow_gpm 0 or more
 * @returns [s]
 * @source rating schedule (memory, moderate)
 */
export function ratingDuration_s(flow_gpm: number): number {
  requireThat(flow_gpm >= 0, 'flow_gpm', flow_gpm, '0 or more')
  return 3600 * (flow_gpm <= 2_500 ? 2 : flow_gpm <= 3_500 ? 3 : 4)
}
