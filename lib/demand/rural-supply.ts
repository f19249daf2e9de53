import { requireNotNegative, requirePositive, requireThat } from '../issue'
import type { ConstructionType, OccupancyClass } from './building'

/** Construction number by type. I–III and V from training texts (seen-2nd), IV from memory (moderate). */
export const constructionNumber: Readonly<Record<ConstructionType, number>> = { I: 0.5, II: 0.75, III: 1, IV: 0.75, V: 1.5 }

/**
 * How a dwelling's construction number is read where sources conflict. `capped`: no more than 1.0, as the standard's
 * own text and worked example have it (memory). `full`: 1.5 for wood frame, as a training text has it: half as much again.
 */
export type DwellingRule = 'capped' | 'full'

export const EXPOSURE_FACTOR = 1.5
const MINIMUM_GAL = 2_000
const MINIMUM_WITH_EXPOSURE_GAL = 3_000

export type RuralSupplyAsk = {
  readonly volume_cuft: number
  readonly occupancyClass: OccupancyClass
  readonly construction: ConstructionType
  readonly isDwelling: boolean
  readonly hasExposure: boolean
  /** Default `capped`. */
  readonly dwellingRule?: DwellingRule
}

/** Construction number that counts: a dwelling's is capped at 1.0 unless the rule says otherwise. */
export function countedConstructionNumber(ask: Pick<RuralSupplyAsk, 'construction' | 'isDwelling' | 'dwellingRule'>): number {
  const { construction, isDwelling, dwellingRule = 'capped' } = ask
  const number = constructionNumber[construction]
  return isDwelling && dwellingRule === 'capped' ? Math.min(1, number) : number
}

/**
 * Least water a building needs by the rural water supply standard.
 *
 *   volume / occupancy class · construction number · (1.5 with exposure), no less than 2,000 gal, 3,000 with exposure
 *
 * For one building without sprinklers; a sprinklered one may be let off by the authority.
 *
 * @param ask volume above 0, classes, exposure
 * @returns [gal]
 * @throws RangeError if out of range
 * @source training texts on NFPA 1142 (seen-2nd), minimum with exposure NFPA 1142-2001 §7.3.2 (seen),
 *   tests/reference/needed-flow.json
 */
export function ruralSupply_gal(ask: RuralSupplyAsk): number {
  const { volume_cuft, occupancyClass, hasExposure } = ask
  requirePositive('volume_cuft', volume_cuft)
  const isClass = Number.isInteger(occupancyClass) && occupancyClass >= 3 && occupancyClass <= 7
  requireThat(isClass, 'occupancyClass', occupancyClass, 'a whole number from 3 to 7')
  const plain = (volume_cuft / occupancyClass) * countedConstructionNumber(ask)
  return hasExposure ? Math.max(MINIMUM_WITH_EXPOSURE_GAL, plain * EXPOSURE_FACTOR) : Math.max(MINIMUM_GAL, plain)
}

/**
 * Least rate at which that water must come.
 *
 *   under 2,500 gal: 250 gpm · to 9,999: 500 · to 19,999: 750 · from 20,000: 1,000
 *
 * @param supply_gal from ruralSupply_gal, 0 or more
 * @returns [gpm]
 * @throws RangeError if negative
 * @source NFPA 1142 §4.6 (memory, high), tests/reference/needed-flow.json
 */
export function ruralDelivery_gpm(supply_gal: number): number {
  requireNotNegative('supply_gal', supply_gal)
  if (supply_gal < 2_500) return 250
  if (supply_gal < 10_000) return 500
  return supply_gal < 20_000 ? 750 : 1_000
}
